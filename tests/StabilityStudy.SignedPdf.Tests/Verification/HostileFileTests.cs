using System.Diagnostics;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Files made to keep the verifier busy.</summary>
public static class HostileFileTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(5);

    [Fact]
    public static void Thousands_of_fields_with_one_signature_take_no_longer()
    {
        var document = Rewritten.Read(SignedDocument.SignedOnce);
        var form = (PdfReference)document.Catalog.Find("AcroForm")!;
        var field = PdfDictionary.Of(
            new("FT", new PdfName("Sig")),
            new("T", PdfString.OfText("f")),
            new("V", Tampering.Value(document, "author"))
        );
        var fields = new PdfArray([.. Enumerable.Repeat<PdfObject>(field, 9_000)]);
        var verification = Verify(
            PdfFileWriter.Append(
                document,
                [new(form, PdfDictionary.Of(new PdfEntry("Fields", fields)))]
            )
        );

        Assert.Contains(DocumentProblem.FieldNotUnique, verification.Problems);
        Assert.Contains(DocumentProblem.LastRevisionNotSigned, verification.Problems);
    }

    [Fact]
    public static void More_revisions_than_anybody_signs_are_not_compared_but_never_hold()
    {
        var file = SignedDocument.SignedOnce;
        for (var i = 0; i < 40; i++)
        {
            file = PdfFileWriter.Append(Rewritten.Read(file), []);
        }

        var verification = Verify(file);

        Assert.Contains(DocumentProblem.RevisionNotSigned, verification.Problems);
        Assert.NotEmpty(verification.Revisions[30].Differences);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void Fields_in_a_circle_are_found()
    {
        var document = Rewritten.Read(SignedDocument.SignedOnce);
        var field = Tampering.Field(document, "approver");
        var dictionary = (PdfDictionary)document.Find(field)!;
        var verification = Verify(
            PdfFileWriter.Append(
                document,
                [new(field, dictionary.With("Kids", new PdfArray([field])))]
            )
        );

        Assert.Contains(DocumentProblem.FormMalformed, verification.Problems);
        Assert.False(verification.Holds);
    }

    private static DocumentVerification Verify(byte[] file)
    {
        var start = Stopwatch.GetTimestamp();
        var verification = SignedDocument.Verify(file);
        Assert.True(Stopwatch.GetElapsedTime(start) < Soon);
        return verification;
    }
}
