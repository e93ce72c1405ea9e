using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Files whose signatures are all right and whose revisions another reader could take differently.</summary>
public static class RevisionFormTests
{
    [Fact]
    public static void What_signing_appends_has_the_form()
    {
        Assert.True(SignedDocument.Verify(SignedDocument.SignedTwice).Holds);

        // The forger's own way of making the same revision gives the same form.
        Assert.True(SignedDocument.Verify(Forgery.SignedAfter([])).Holds);
    }

    /// <summary>A second copy of an object is what a reader shows that looks for objects by itself; a comment could hide one.</summary>
    [Theory]
    [InlineData("7 0 obj\n<</Type /Page>>\nendobj\n")]
    [InlineData("% nothing\n")]
    [InlineData("\n")]
    [InlineData("startxref\n0\n%%EOF\n")]
    [InlineData("xref\n0 0\ntrailer\n<</Size 1>>\n")]
    public static void Bytes_between_two_revisions_that_nothing_names_are_found(string unnamed)
    {
        var verification = SignedDocument.Verify(Forgery.SignedAfter(HandMadePdf.Bytes(unnamed)));

        Assert.False(verification.Holds);
        Assert.All(verification.Signatures, static signature => Assert.True(signature.Holds));
        Assert.Equal([DocumentProblem.RevisionNotInForm], verification.Problems);
    }

    /// <summary>The last bytes name the newest cross-reference again, so that nothing about them is wrong but that nobody signed them.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("% a hidden page\n")]
    [InlineData("7 0 obj\n<</Type /Page>>\nendobj\n")]
    public static void A_tail_with_an_ending_of_its_own_is_found(string hidden)
    {
        var signed = SignedDocument.SignedTwice;
        var offset = Rewritten.Read(signed).Revisions[^1].CrossReferenceOffset;

        foreach (var digits in new[] { "", "000000", new string('0', 40) })
        {
            var tail = FormattableString.Invariant($"{hidden}startxref\n{digits}{offset}\n%%EOF\n");
            byte[] file = [.. signed, .. HandMadePdf.Bytes(tail)];

            Assert.False(SignedDocument.Verify(file).Holds);
            Assert.False(SignedDocument.Approver.Sign(file).TryGet(out _, out _));
        }
    }

    /// <summary>An older revision named last, so that a reader shows what it held.</summary>
    [Fact]
    public static void A_tail_that_names_an_older_revision_is_found()
    {
        var signed = SignedDocument.SignedTwice;
        var offset = Rewritten.Read(signed).Revisions[0].CrossReferenceOffset;

        Assert.False(
            SignedDocument
                .Verify([
                    .. signed,
                    .. HandMadePdf.Bytes(
                        FormattableString.Invariant($"startxref\n{offset}\n%%EOF\n")
                    ),
                ])
                .Holds
        );
    }

    [Fact]
    public static void The_revision_of_a_request_is_told_from_that_of_another()
    {
        var content = SignedDocument.Approver.Content;
        bool Is(SignatureContent other) =>
            PdfSigner.IsAppended(SignedDocument.SignedTwice, 3, other);

        Assert.True(Is(content));
        Assert.False(Is(content with { Reason = content.Reason + "." }));
        Assert.False(Is(content with { SigningTime = content.SigningTime.AddSeconds(1) }));
        Assert.False(
            Is(
                content with
                {
                    Stamp = content.Stamp with
                    {
                        Lines = [.. content.Stamp.Lines, new("APPROVED", 9)],
                    },
                }
            )
        );
        Assert.False(PdfSigner.IsAppended(SignedDocument.SignedTwice, 2, content));
        Assert.False(PdfSigner.IsAppended(SignedDocument.SignedTwice, 9, content));
    }
}
