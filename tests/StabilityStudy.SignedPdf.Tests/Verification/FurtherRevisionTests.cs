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

        Assert.Equal(
            [DocumentProblem.LastRevisionNotSigned, DocumentProblem.RevisionNotInForm],
            verification.Problems
        );
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

        Assert.Equal([DocumentProblem.RevisionNotInForm], verification.Problems);
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
        FurtherRevision.AssertChanged(
            Tampering.WithStream(
                Signed,
                static document => Tampering.Typed(document, "EmbeddedFile"),
                "S1,9.9\n"u8.ToArray()
            ),
            DocumentPart.Attachments
        );

    [Fact]
    public static void Changed_metadata_are_found() =>
        FurtherRevision.AssertChanged(
            Tampering.WithStream(
                Signed,
                static document => Tampering.Typed(document, "Metadata"),
                "<x/>"u8.ToArray()
            ),
            DocumentPart.Metadata
        );

    [Fact]
    public static void An_action_on_opening_is_found() =>
        FurtherRevision.AssertChanged(
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
        var verification = FurtherRevision.AssertChanged(
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

        Assert.Equal(
            [DocumentProblem.LastRevisionNotSigned, DocumentProblem.RevisionNotInForm],
            verification.Problems
        );
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
}
