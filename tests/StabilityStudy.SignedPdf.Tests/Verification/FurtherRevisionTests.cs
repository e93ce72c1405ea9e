using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Revisions that somebody appended to a signed document: the signatures stay right, the document does not.</summary>
public static class FurtherRevisionTests
{
    private static byte[] Signed => SignedDocument.SignedTwice;

    [Fact]
    public static void A_revision_that_paints_over_a_page_is_found()
    {
        var verification = SignedDocument.Verify(Tampering.WithPaintedPage(Signed));

        Assert.Equal([DocumentProblem.LastRevisionNotSigned], verification.Problems);
        Assert.All(verification.Signatures, static signature => Assert.True(signature.Holds));
        var differences = verification.Revisions[3].Differences;
        Assert.Equal(
            [
                (RevisionChange.Changed, DocumentPart.Pages),
                (RevisionChange.Added, DocumentPart.Pages),
            ],
            differences.Select(static d => (d.Change, d.Part))
        );
        Assert.Equal("Contents", differences[0].Entry);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void A_signature_on_a_painted_page_is_found()
    {
        var verification = SignedDocument.Verify(Forgery.SignedWithPaintedPage());

        Assert.Empty(verification.Problems);
        Assert.All(verification.Signatures, static signature => Assert.True(signature.Holds));
        Assert.Equal(
            [
                (RevisionChange.Changed, DocumentPart.Pages),
                (RevisionChange.Added, DocumentPart.Pages),
            ],
            verification.Revisions[2].Differences.Select(static d => (d.Change, d.Part))
        );
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void A_painted_page_stays_found_after_a_later_signature_is_claimed()
    {
        var painted = Tampering.WithPaintedPage(SignedDocument.SignedOnce);
        var differences = RevisionComparison.Compare(
            Rewritten.Read(SignedDocument.SignedOnce),
            Rewritten.Read(painted)
        );

        Assert.NotEmpty(differences);
    }

    [Fact]
    public static void A_changed_attachment_is_found() =>
        AssertChanged(
            Tampering.WithStream(
                Signed,
                static document => Tampering.Typed(document, "EmbeddedFile"),
                "S1,9.9\n"u8.ToArray()
            ),
            DocumentPart.Attachments
        );

    [Fact]
    public static void Changed_metadata_are_found() =>
        AssertChanged(
            Tampering.WithStream(
                Signed,
                static document => Tampering.Typed(document, "Metadata"),
                "<x/>"u8.ToArray()
            ),
            DocumentPart.Metadata
        );

    [Fact]
    public static void An_action_on_opening_is_found() =>
        AssertChanged(
            Tampering.WithChanged(
                Signed,
                Tampering.Root,
                static catalog => catalog.With("OpenAction", PdfDictionary.Empty)
            ),
            DocumentPart.Catalog,
            "OpenAction"
        );

    [Fact]
    public static void A_certification_taken_away_is_found()
    {
        var verification = AssertChanged(
            Tampering.WithChanged(
                Signed,
                Tampering.Root,
                static catalog => catalog.Without("Perms")
            ),
            DocumentPart.Catalog,
            "Perms"
        );

        Assert.Contains(DocumentProblem.CertificationMissing, verification.Problems);
    }

    [Fact]
    public static void A_form_that_asks_for_new_appearances_is_found() =>
        AssertChanged(
            Tampering.WithChanged(
                Signed,
                static document => (PdfReference)document.Catalog.Find("AcroForm")!,
                static form => form.With("NeedAppearances", new PdfBoolean(true))
            ),
            DocumentPart.Form,
            "NeedAppearances"
        );

    [Fact]
    public static void A_moved_stamp_is_found() =>
        AssertChanged(
            Tampering.WithChanged(
                Signed,
                static document => Tampering.Field(document, "approver"),
                static field =>
                    field.With(
                        "Rect",
                        new PdfArray([.. Enumerable.Repeat<PdfObject>(new PdfInteger(0), 4)])
                    )
            ),
            DocumentPart.Form,
            "Rect"
        );

    [Fact]
    public static void A_stamp_drawn_anew_is_found() =>
        AssertChanged(
            Tampering.WithStream(
                Signed,
                static document =>
                    (PdfReference)
                        (
                            (PdfDictionary)
                                (
                                    (PdfDictionary)
                                        document.Find(Tampering.Field(document, "author"))!
                                ).Find("AP")!
                        ).Find("N")!,
                "0 g"u8.ToArray()
            ),
            DocumentPart.Form
        );

    [Fact]
    public static void A_removed_signature_is_found()
    {
        var verification = AssertChanged(
            Tampering.WithChanged(
                Signed,
                static document => Tampering.Field(document, "approver"),
                static field => field.Without("V")
            ),
            DocumentPart.Form,
            "V"
        );

        Assert.Contains(DocumentProblem.SignatureWithoutField, verification.Problems);
        Assert.Equal(["approver"], verification.EmptyFields, StringComparer.Ordinal);
    }

    [Fact]
    public static void A_signature_moved_to_another_field_is_found()
    {
        var verification = AssertChanged(
            Tampering.WithChanged(
                Signed,
                static document => Tampering.Field(document, "approver"),
                static field =>
                    field.With(
                        "V",
                        new PdfReference(
                            Tampering.Value(Rewritten.Read(Signed), "author").Number,
                            0
                        )
                    )
            ),
            DocumentPart.Form,
            "V"
        );

        Assert.Contains(
            SignatureProblem.RevisionSignedByAnother,
            verification.Signatures.SelectMany(static signature => signature.Problems)
        );
        Assert.Contains(DocumentProblem.FieldNotUnique, verification.Problems);
    }

    [Fact]
    public static void A_changed_entry_of_a_signature_is_found()
    {
        var verification = AssertChanged(
            Tampering.WithChanged(
                Signed,
                static document => Tampering.Value(document, "approver"),
                static signature => signature.With("Reason", PdfString.OfText("I decline"))
            ),
            DocumentPart.Form,
            "Reason"
        );

        Assert.Equal("I decline", verification.Signatures[1].Reason);
    }

    [Fact]
    public static void An_object_that_nothing_leads_to_is_found() =>
        Assert.Equal(
            [
                new RevisionDifference(
                    RevisionChange.Added,
                    DocumentPart.Unreachable,
                    Tampering.Next(Rewritten.Read(Signed)),
                    null
                ),
            ],
            SignedDocument.Verify(Tampering.WithLooseObject(Signed)).Revisions[3].Differences
        );

    [Fact]
    public static void A_removed_object_is_found()
    {
        var page = Tampering.Page(Rewritten.Read(Signed));

        Assert.Equal(
            [new RevisionDifference(RevisionChange.Removed, DocumentPart.Pages, page, null)],
            SignedDocument.Verify(Tampering.WithFreed(Signed, page)).Revisions[3].Differences
        );
    }

    [Fact]
    public static void An_empty_revision_is_found()
    {
        var verification = SignedDocument.Verify(PdfFileWriter.Append(Rewritten.Read(Signed), []));

        Assert.Equal([DocumentProblem.LastRevisionNotSigned], verification.Problems);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void Another_catalog_is_found()
    {
        var pages = Rewritten.Read(Signed).Catalog.Find("Pages")!;
        var verification = SignedDocument.Verify(
            Tampering.WithTrailer(Signed, trailer => trailer.With("Root", pages))
        );

        Assert.Equal(
            [new RevisionDifference(RevisionChange.Changed, DocumentPart.Trailer, null, "Root")],
            verification.Revisions[3].Differences
        );
        Assert.Contains(DocumentProblem.SignatureWithoutField, verification.Problems);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void A_signature_field_added_later_is_found()
    {
        var document = Rewritten.Read(SignedDocument.SignedOnce);
        var reference = Tampering.Next(document);
        var form = (PdfReference)document.Catalog.Find("AcroForm")!;
        var dictionary = (PdfDictionary)document.Find(form)!;
        var fields = (PdfArray)dictionary.Find("Fields")!;
        var field = PdfDictionary.Of(
            new("FT", new PdfName("Sig")),
            new("T", PdfString.OfText("third"))
        );
        var verification = SignedDocument.Verify(
            PdfFileWriter.Append(
                document,
                [
                    new(
                        form,
                        dictionary.With("Fields", new PdfArray([.. fields.Items, reference]))
                    ),
                    new(reference, field),
                ]
            )
        );

        Assert.Contains(
            verification.Revisions[2].Differences,
            static difference => difference is { Part: DocumentPart.Form, Entry: "Fields" }
        );
    }

    private static DocumentVerification AssertChanged(
        byte[] file,
        DocumentPart part,
        string? entry = null
    )
    {
        var verification = SignedDocument.Verify(file);
        var difference = Assert.Single(verification.Revisions[3].Differences);

        Assert.Equal((RevisionChange.Changed, part), (difference.Change, difference.Part));
        if (entry is not null)
        {
            Assert.Equal(entry, difference.Entry);
        }

        Assert.Contains(DocumentProblem.LastRevisionNotSigned, verification.Problems);
        Assert.False(verification.Holds);
        return verification;
    }
}
