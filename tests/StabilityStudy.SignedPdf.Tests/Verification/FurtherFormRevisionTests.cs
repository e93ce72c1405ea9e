using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Revisions appended to a signed document that touch its form, stamps or signatures.</summary>
public static class FurtherFormRevisionTests
{
    private static byte[] Signed => SignedDocument.SignedTwice;

    [Fact]
    public static void A_form_that_asks_for_new_appearances_is_found() =>
        FurtherRevision.AssertChanged(
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
        FurtherRevision.AssertChanged(
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
        FurtherRevision.AssertChanged(
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
        var verification = FurtherRevision.AssertChanged(
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
        var verification = FurtherRevision.AssertChanged(
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
        var verification = FurtherRevision.AssertChanged(
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
}
