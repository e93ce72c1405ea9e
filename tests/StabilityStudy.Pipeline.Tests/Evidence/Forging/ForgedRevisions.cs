using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>The approver's right signature over a revision that does more than sign, or is written in another form.</summary>
internal static class ForgedRevisions
{
    private const string OtherForm = "another form than signing gives it";
    private const string NotSigned = "is not what was signed";
    private const string NotWhole = "does not cover the whole file";
    private const string NotForbidding = "does not forbid later changes";

    public static PdfStream Paint { get; } =
        new(PdfDictionary.Empty, "1 g 0 0 900 900 re f"u8.ToArray());

    private static PdfStream Picture { get; } =
        new(
            PdfDictionary.Of(
                new("Type", new PdfName("XObject")),
                new("Subtype", new PdfName("Form")),
                new("BBox", new PdfArray([.. new long[] { 0, 0, 9, 9 }.Select(Integer)])),
                new("Resources", PdfDictionary.Empty)
            ),
            "0 0 9 9 re f"u8.ToArray()
        );

    private static PdfDictionary Script { get; } =
        PdfDictionary.Of(
            new("S", new PdfName("JavaScript")),
            new("JS", PdfString.OfText("app.alert('approved')"))
        );

    public static IEnumerable<ForgedFile> All { get; } =
    [
        new("bytes of no object", 2, OtherForm, () => ForgedRevision.SignAfter("% hidden\n")),
        new(
            "an object that the cross-reference does not name",
            2,
            OtherForm,
            () => ForgedRevision.SignAfter("900 0 obj\n<</Hidden true>>\nendobj\n")
        ),
        new("a classic table beside a stream", 2, OtherForm, () => ForgedRevision.SignWithTable()),
        new(
            "a comment inside the cross-reference section",
            2,
            OtherForm,
            () => ForgedRevision.SignWithTable(insideTable: "% hidden\n")
        ),
        new(
            "an object listed twice",
            1,
            "lists an object twice",
            () => ForgedRevision.SignWithTable(isDoubled: true)
        ),
        new(
            "an offset with zeros before it",
            2,
            OtherForm,
            () => ForgedRevision.SignWithTable(digits: 12)
        ),
        new(
            "both kinds of cross-reference at once",
            2,
            "The file cannot be read",
            () =>
                ForgedRevision.SignWithTable(trailer: value =>
                    value.With("XRefStm", new PdfInteger(20))
                )
        ),
        new(
            "a further entry of the trailer",
            2,
            "Trailer (Extra)",
            () =>
                ForgedRevision.SignWithTable(trailer: value =>
                    value.With("Extra", new PdfInteger(1))
                )
        ),
        Changed(
            "an object that nothing leads to",
            2,
            "Unreachable",
            revision => revision.Add(PdfString.OfText("loose"))
        ),
        Changed(
            "a page painted over",
            2,
            "Pages (Contents) was changed",
            revision =>
            {
                var paint = revision.Add(Paint);
                revision.Change(revision.Page, page => page.With("Contents", paint));
            }
        ),
        Changed(
            "a page taken out",
            2,
            "Pages",
            revision =>
                revision.Change(
                    Assert.IsType<PdfReference>(revision.Before.Catalog.Find("Pages")),
                    WithoutLastPage
                )
        ),
        Changed(
            "a note on the page",
            2,
            "Pages",
            revision =>
            {
                var note = revision.Add(
                    PdfDictionary.Of(
                        new("Type", new PdfName("Annot")),
                        new("Subtype", new PdfName("FreeText")),
                        new("Contents", PdfString.OfText("8 h")),
                        new("Rect", new PdfArray([.. new long[] { 9, 9, 99, 99 }.Select(Integer)]))
                    )
                );
                revision.Change(
                    revision.Page,
                    page => page.With("Annots", With(revision, page.Find("Annots"), note))
                );
            }
        ),
        Changed(
            "a further attached file",
            2,
            "Catalog",
            revision =>
            {
                var file = revision.Add(
                    PdfDictionary.Of(
                        new("Type", new PdfName("Filespec")),
                        new("F", PdfString.OfText("analysis.json"))
                    )
                );
                revision.Change(
                    revision.Catalog,
                    catalog => catalog.With("AF", With(revision, catalog.Find("AF"), file))
                );
            }
        ),
        InCatalog("optional content", "OCProperties", PdfDictionary.Empty),
        InCatalog("a script when the file opens", "OpenAction", Script),
        InCatalog("an outline", "Outlines", PdfDictionary.Empty),
        InCatalog("other page numbers", "PageLabels", PdfDictionary.Empty),
        InCatalog("extensions of the format", "Extensions", PdfDictionary.Empty),
        Changed(
            "permissions of a second kind",
            2,
            "Catalog",
            revision =>
                revision.Change(
                    revision.Catalog,
                    catalog =>
                        catalog.With(
                            "Perms",
                            Assert
                                .IsType<PdfDictionary>(catalog.Find("Perms"))
                                .With("UR3", revision.Value)
                        )
                )
        ),
        InField("the field hidden", field => field.With("F", new PdfInteger(2))),
        InField("the field no longer read-only", field => field.With("Ff", new PdfInteger(0))),
        InField("an action of the field", field => field.With("A", Script)),
        InField("another description", field => field.With("TU", PdfString.OfText("8 h"))),
        InField(
            "the field moved",
            field =>
                field.With("Rect", new PdfArray([.. new long[] { 0, 0, 600, 800 }.Select(Integer)]))
        ),
        Changed(
            "a further widget of the field",
            2,
            "Form",
            revision =>
            {
                var widget = revision.Add(
                    PdfDictionary.Of(
                        new("Subtype", new PdfName("Widget")),
                        new("Parent", revision.Field)
                    )
                );
                revision.Change(
                    revision.Field,
                    field => field.With("Kids", new PdfArray([widget]))
                );
            }
        ),
        Changed(
            "a second appearance",
            1,
            NotSigned,
            revision =>
            {
                var other = revision.Add(Picture);
                revision.Change(
                    revision.Field,
                    field =>
                        field.With(
                            "AP",
                            Assert.IsType<PdfDictionary>(field.Find("AP")).With("D", other)
                        )
                );
            }
        ),
        Changed(
            "another picture in place of the stamp",
            1,
            NotSigned,
            revision =>
            {
                var other = revision.Add(Picture);
                revision.Change(
                    revision.Field,
                    field => field.With("AP", PdfDictionary.Of(new PdfEntry("N", other)))
                );
            }
        ),
        InSignature("a further entry", value => value.With("Prop_Build", PdfDictionary.Empty)),
        InSignature(
            "a place of signing",
            value => value.With("Location", PdfString.OfText("here"))
        ),
        InSignature("a way of proof", value => value.With("Prop_AuthType", new PdfName("PIN"))),
        new(
            "a signature of another kind",
            1,
            "another kind than this program makes",
            () =>
                Signed(revision =>
                    revision.Change(
                        revision.Value,
                        value => value.With("SubFilter", new PdfName("adbe.pkcs7.detached"))
                    )
                )
        ),
        Range(
            "a byte range with a fifth number",
            range => range.Replace("]", " 0]", StringComparison.Ordinal),
            NotWhole
        ),
        Range(
            "a byte range from the second byte",
            range => range.Replace("[0 ", "[1 ", StringComparison.Ordinal),
            NotWhole
        ),
        Range(
            "a byte range with a fraction",
            range => range.Replace("[0 ", "[0.0 ", StringComparison.Ordinal),
            NotWhole
        ),
        Range("a byte range that ends early", range => range[..^2] + "]", NotWhole),
        new(
            "a byte range with zeros before a number",
            2,
            OtherForm,
            () => Signed(_ => { }, range => range.Replace("[0 ", "[000 ", StringComparison.Ordinal))
        ),
        new(
            "two fields with one signature",
            2,
            "Two fields share a name or a signature",
            () =>
                Signed(revision =>
                    revision.Change(
                        ForgedTails.Field(revision, "signatory1"),
                        field => field.With("V", revision.Value)
                    )
                )
        ),
        new(
            "no word about later changes",
            2,
            NotForbidding,
            () => First(value => value.Without("Reference"))
        ),
        new(
            "any later change allowed",
            2,
            NotForbidding,
            () =>
                First(value =>
                    value.With(
                        "Reference",
                        new PdfArray([
                            SignatureDictionary.Certification.With(
                                "TransformParams",
                                PdfDictionary.Of(
                                    new("Type", new PdfName("TransformParams")),
                                    new("P", new PdfInteger(3)),
                                    new("V", new PdfName("1.2"))
                                )
                            ),
                        ])
                    )
                )
        ),
        new(
            "no permissions in the catalog",
            2,
            NotForbidding,
            () =>
                ForgedRevision.Sign(
                    EvidenceExample.Unsigned,
                    ForgedRevision.Author,
                    EvidenceExample.Author,
                    revision =>
                        revision.Change(revision.Catalog, catalog => catalog.Without("Perms"))
                )
        ),
    ];

    /// <summary>The page tree without its last page.</summary>
    public static PdfDictionary WithoutLastPage(PdfDictionary pages)
    {
        var kids = Assert.IsType<PdfArray>(pages.Find("Kids")).Items;
        return pages
            .With("Kids", new PdfArray(kids[..^1]))
            .With("Count", new PdfInteger(kids.Length - 1));
    }

    private static PdfObject Integer(long value) => new PdfInteger(value);

    private static PdfArray With(Revision revision, PdfObject? list, PdfReference added) =>
        new([.. (revision.Before.Resolve(list) as PdfArray)?.Items ?? [], added]);

    private static byte[] Signed(Action<Revision> change, Func<string, string>? range = null) =>
        ForgedRevision.Sign(
            EvidenceExample.SignedOnce,
            ForgedRevision.Approver,
            EvidenceExample.Director,
            change,
            range
        );

    private static byte[] First(Func<PdfDictionary, PdfDictionary> change) =>
        ForgedRevision.Sign(
            EvidenceExample.Unsigned,
            ForgedRevision.Author,
            EvidenceExample.Author,
            revision => revision.Change(revision.Value, change)
        );

    private static ForgedFile Changed(
        string name,
        int part,
        string words,
        Action<Revision> change
    ) => new(name, part, words, () => Signed(change));

    private static ForgedFile InCatalog(string name, string entry, PdfObject value) =>
        Changed(
            name,
            2,
            $"Catalog ({entry})",
            revision => revision.Change(revision.Catalog, catalog => catalog.With(entry, value))
        );

    private static ForgedFile InField(string name, Func<PdfDictionary, PdfDictionary> change) =>
        Changed(name, 2, "Form", revision => revision.Change(revision.Field, change));

    private static ForgedFile InSignature(string name, Func<PdfDictionary, PdfDictionary> change) =>
        Changed(
            name + " in the signature",
            1,
            NotSigned,
            revision => revision.Change(revision.Value, change)
        );

    private static ForgedFile Range(string name, Func<string, string> range, string words) =>
        new(name, 1, words, () => Signed(_ => { }, range));
}
