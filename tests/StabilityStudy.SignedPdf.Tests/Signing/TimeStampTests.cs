using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>Signatures whose time an authority proves.</summary>
[Trait("lane", "slow")]
public sealed class TimeStampTests : IDisposable
{
    private readonly TimeStampAuthority _authority = new();

    public void Dispose() => _authority.Dispose();

    [Fact]
    public void A_time_stamp_is_taken_and_verified()
    {
        var signature = SignedDocument.Verify(Stamped(_authority)).Signatures[0];

        Assert.Empty(signature.Problems);
        Assert.NotNull(signature.TimeStamp);
        Assert.Equal("Trial Time", signature.TimeStamp.Authority.Name);
        Assert.Equal(ChainOutcome.Trusted, signature.TimeStamp.Chain.Outcome);
        Assert.True(signature.TimeStamp.Time > Signers.Time);
    }

    [Fact]
    public void Without_a_trust_store_the_authority_is_not_checked()
    {
        var signature = SignatureVerifier
            .Verify(Stamped(_authority), VerificationOptions.WithoutTrust)
            .Signatures[0];

        Assert.Empty(signature.Problems);
        Assert.Equal(ChainOutcome.NotChecked, signature.TimeStamp?.Chain.Outcome);
    }

    [Fact]
    public void An_authority_that_is_not_trusted_is_found()
    {
        using var other = new TimeStampAuthority(Signers.OtherAuthority);
        var signature = SignedDocument.Verify(Stamped(other)).Signatures[0];

        Assert.Equal(ChainOutcome.NotTrusted, signature.TimeStamp?.Chain.Outcome);
        Assert.Equal(ChainOutcome.Trusted, signature.Chain.Outcome);
    }

    [Fact]
    public void A_certificate_over_at_the_proven_time_is_found()
    {
        var shortLived = Signers.Issue("Sina Short", rsa: false, to: Signers.Time.AddHours(1));
        var signature = SignedDocument
            .Verify(Stamped(_authority, shortLived.SigningKey()))
            .Signatures[0];

        Assert.Equal([SignatureProblem.CertificateExpired], signature.Problems);
    }

    [Fact]
    public void A_revocation_after_the_proven_time_does_not_count()
    {
        var signed = Stamped(_authority);
        var proven = SignedDocument.Verify(signed).Signatures[0].TimeStamp?.Time ?? default;

        Assert.Equal(RevocationOutcome.NotRevoked, Revocation(signed, proven.AddDays(1)));
        Assert.Equal(RevocationOutcome.Revoked, Revocation(signed, proven.AddDays(-1)));
    }

    [Fact]
    public void A_date_of_signing_after_the_proven_time_is_found()
    {
        var late = SignedDocument.Author with
        {
            SigningTime = Signers.End.AddYears(-1),
            TimeStamp = _authority.Source,
        };

        Assert.False(late.Sign(SignedDocument.Unsigned).TryGet(out _, out var refusal));
        Assert.Equal(SigningRefusalReason.ResultDoesNotVerify, refusal.Reason);
        Assert.Contains(
            nameof(SignatureProblem.TimeStampBeforeSigning),
            refusal.What,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_time_stamp_of_another_signature_is_refused()
    {
        ReadOnlyMemory<byte>? first = null;
        SignedDocument.Sign(
            SignedDocument.Unsigned,
            SignedDocument.Author with
            {
                TimeStamp = _authority.Source with
                {
                    Ask = request => first = _authority.Answer(request),
                },
            }
        );

        Assert.NotNull(first);
        Assert.Equal(
            SigningRefusalReason.TimeStampInvalid,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Approver with
                {
                    TimeStamp = _authority.Source with { Ask = _ => first },
                }
            )
        );
    }

    [Fact]
    public void A_stamp_by_a_certificate_for_other_uses_is_refused()
    {
        // openssl itself refuses such a certificate, and says so in its answer.
        using var other = new TimeStampAuthority(purpose: "1.3.6.1.5.5.7.3.4");

        Assert.Equal(
            SigningRefusalReason.TimeStampInvalid,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    TimeStamp = other.Source,
                }
            )
        );
    }

    [Fact]
    public void An_altered_time_stamp_is_found()
    {
        var file = Stamped(_authority);
        var (start, _) = Forgery.Gap(file, "author");
        var last = start + (2 * Forgery.Container(file, "author").Length);
        var digit = (char)file[last];
        var changed = Tampering.Replaced(file, $"{digit}", digit == '0' ? "1" : "0", last);
        var signature = SignedDocument.Verify(changed).Signatures[0];

        Assert.Equal([SignatureProblem.TimeStampInvalid], signature.Problems);
        Assert.Null(signature.TimeStamp);
    }

    private static byte[] Stamped(TimeStampAuthority authority, SigningKey? key = null) =>
        SignedDocument.Sign(
            SignedDocument.Unsigned,
            SignedDocument.Author with
            {
                Key = key ?? SignedDocument.Author.Key,
                TimeStamp = authority.Source,
            }
        );

    private static RevocationOutcome? Revocation(byte[] signed, DateTimeOffset revoked)
    {
        var list = Rewritten.Value(
            RevocationList.Read(
                Signers.RevocationListOf(revoked.AddDays(30), revoked, Signers.Author)
            )
        );
        return SignatureVerifier
            .Verify(signed, Signers.Trusting with { RevocationLists = [list] })
            .Signatures[0]
            .Chain.Revocation;
    }
}
