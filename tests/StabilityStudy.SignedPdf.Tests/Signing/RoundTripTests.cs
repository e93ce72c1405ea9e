using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

public static class RoundTripTests
{
    [Fact]
    public static void Two_signatures_by_RSA_and_on_a_curve_verify()
    {
        var verification = SignedDocument.Verify(SignedDocument.SignedTwice);

        Assert.Null(verification.Failure);
        Assert.Empty(verification.Problems);
        Assert.Equal(
            ["author", "approver"],
            verification.Signatures.Select(static s => s.FieldName),
            StringComparer.Ordinal
        );
        Assert.All(verification.Signatures, static signature => Assert.Empty(signature.Problems));
        Assert.All(
            verification.Signatures,
            static signature => Assert.Equal(ChainOutcome.Trusted, signature.Chain.Outcome)
        );
        Assert.All(verification.Revisions, static revision => Assert.Empty(revision.Differences));
        Assert.Equal(
            [null, "author", "approver"],
            verification.Revisions.Select(static r => r.SignedField),
            StringComparer.Ordinal
        );
        Assert.Empty(verification.EmptyFields);
        Assert.True(verification.Holds);
    }

    [Fact]
    public static void What_was_signed_along_is_read_back()
    {
        var signatures = SignedDocument.Verify(SignedDocument.SignedTwice).Signatures;

        Assert.Equal("Ada Author", signatures[0].SignerName);
        Assert.Equal("I have carried out the study", signatures[0].Reason);
        Assert.Equal("Trial laboratory", signatures[0].Location);
        Assert.Null(signatures[0].Statement);
        Assert.True(signatures[0].Certifies);
        Assert.Equal(Signers.Time, signatures[0].ClaimedTime);
        Assert.Equal(TimeSpan.FromHours(-5), signatures[0].ClaimedTime?.Offset);
        Assert.Equal("Ada Author", signatures[0].Signer?.Name);
        Assert.False(signatures[0].Signer?.IsSelfIssued);
        Assert.Null(signatures[1].Location);
        Assert.Equal("""{"decision":"approve"}""", signatures[1].Statement);
        Assert.False(signatures[1].Certifies);
        Assert.Equal(3, signatures[1].Revision);
    }

    [Fact]
    public static void Signing_only_appends()
    {
        Assert.Equal(
            SignedDocument.Unsigned,
            SignedDocument.SignedOnce[..SignedDocument.Unsigned.Length]
        );
        Assert.Equal(
            SignedDocument.SignedOnce,
            SignedDocument.SignedTwice[..SignedDocument.SignedOnce.Length]
        );
    }

    [Fact]
    public static void Attachments_can_still_be_read()
    {
        var files = Rewritten.Value(
            EmbeddedFiles.Extract(Rewritten.Read(SignedDocument.SignedTwice))
        );

        Assert.Contains(
            files,
            static file => string.Equals(file.Name, "results.csv", StringComparison.Ordinal)
        );
    }

    [Fact]
    public static void Both_stamps_share_one_font()
    {
        var first = Rewritten.Read(SignedDocument.SignedOnce).Objects.Length;
        var second = Rewritten.Read(SignedDocument.SignedTwice).Objects.Length;

        // A stamp and a signature; the first brought the objects of the font besides.
        Assert.Equal(2, second - first);
        Assert.True(first - Rewritten.Read(SignedDocument.Unsigned).Objects.Length > 2);
    }

    [Fact]
    public static void The_second_field_may_be_signed_first()
    {
        var signed = SignedDocument.Sign(
            SignedDocument.Sign(SignedDocument.Unsigned, SignedDocument.Approver),
            SignedDocument.Author
        );
        var verification = SignedDocument.Verify(signed);

        Assert.True(verification.Holds);
        Assert.True(verification.Signatures[0].Certifies);
        Assert.Equal("approver", verification.Signatures[0].FieldName);
    }

    [Fact]
    public static void An_unsigned_document_holds_nothing()
    {
        var verification = SignedDocument.Verify(SignedDocument.Unsigned);

        Assert.False(verification.Holds);
        Assert.Empty(verification.Problems);
        Assert.Empty(verification.Signatures);
        Assert.Equal(["author", "approver"], verification.EmptyFields, StringComparer.Ordinal);
    }

    [Fact]
    public static void A_signature_cut_off_leaves_its_field_empty()
    {
        var verification = SignedDocument.Verify(
            SignedDocument.SignedTwice[..SignedDocument.SignedOnce.Length]
        );

        Assert.True(verification.Holds);
        Assert.Equal(["approver"], verification.EmptyFields, StringComparer.Ordinal);
    }

    [Fact]
    public static void Without_a_trust_store_nothing_is_said_about_chains()
    {
        var verification = SignatureVerifier.Verify(
            SignedDocument.SignedTwice,
            VerificationOptions.WithoutTrust
        );

        Assert.True(verification.Holds);
        Assert.All(
            verification.Signatures,
            static signature => Assert.Equal(ChainOutcome.NotChecked, signature.Chain.Outcome)
        );
    }

    [Fact]
    public static void Reserving_and_rewriting_gives_the_same_bytes_each_time()
    {
        Assert.Equal(
            SignedDocument.Reserved(DrawnDocument.Draw(pages: 1)),
            SignedDocument.Reserved(DrawnDocument.Draw(pages: 1))
        );
    }
}
