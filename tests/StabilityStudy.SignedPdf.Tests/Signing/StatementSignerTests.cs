using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

public sealed class StatementSignerTests
{
    private static readonly ReadOnlyMemory<byte> s_statement = Encoding.UTF8.GetBytes(
        "protocol lock\nnumber 1\n"
    );

    [Fact]
    public void A_signature_over_bytes_names_its_signer()
    {
        using var key = Key();
        var signature = StatementSigner.Sign(s_statement, key);

        Assert.Equal(key.Certificate.Sha256, SignerOf(s_statement, signature)?.Sha256);
    }

    [Fact]
    public void Other_bytes_or_a_damaged_signature_have_no_signer()
    {
        using var key = Key();
        var signature = StatementSigner.Sign(s_statement, key).ToArray();
        var damaged = signature.ToArray();
        damaged[^5] ^= 1;

        Assert.Null(SignerOf("protocol lock\nnumber 2\n"u8.ToArray(), signature));
        Assert.Null(SignerOf(s_statement, damaged));
        Assert.Null(SignerOf(s_statement, "nothing"u8.ToArray()));
    }

    [Fact]
    public void What_is_no_time_stamp_proves_no_time()
    {
        using var key = Key();

        Assert.Null(TimeOf(s_statement, StatementSigner.Sign(s_statement, key)));
        Assert.Null(TimeOf(s_statement, "nothing"u8.ToArray()));
    }

    [Fact]
    public void An_authority_that_does_not_answer_gives_no_stamp() =>
        Assert.False(
            StatementSigner
                .Stamp(s_statement, new TimeStampSource(_ => null, new byte[16]))
                .TryGet(out _, out _)
        );

    [Fact]
    public void A_time_stamp_proves_the_time_of_these_bytes_only()
    {
        using var authority = new TimeStampAuthority();
        Assert.True(
            StatementSigner.Stamp(s_statement, authority.Source).TryGet(out var token, out _)
        );

        Assert.NotNull(TimeOf(s_statement, token));
        Assert.Null(TimeOf("other"u8.ToArray(), token));
    }

    private static CertificateFacts? SignerOf(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> signature
    ) =>
        StatementVerifier.Signature(
            statement,
            signature,
            DateTimeOffset.UnixEpoch.AddYears(55),
            VerificationOptions.WithoutTrust
        )
            is { Holds: true, Signer: var signer }
            ? signer
            : null;

    private static DateTimeOffset? TimeOf(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> token
    ) =>
        StatementVerifier
            .TimeStamp(statement, token, VerificationOptions.WithoutTrust, out _)
            ?.Time;

    private static SigningKey Key()
    {
        var made = TrialCertificate.Create(
            "LS1",
            null,
            DateTimeOffset.UnixEpoch.AddYears(50),
            DateTimeOffset.UnixEpoch.AddYears(80),
            "x",
            System.Security.Cryptography.RandomNumberGenerator.GetBytes(16)
        );
        Assert.True(SigningKeyReader.Read(made.Pkcs12, null, "x").TryGet(out var key, out _));
        return key;
    }
}
