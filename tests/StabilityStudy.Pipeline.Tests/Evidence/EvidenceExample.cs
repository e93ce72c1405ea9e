using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>The smallest example study, its report, two signers with self-issued certificates, and the signed reports.</summary>
internal static class EvidenceExample
{
    public static DateTimeOffset Now { get; } = new(2026, 6, 1, 10, 30, 0, TimeSpan.FromHours(-5));

    public static StudyBytes StudyFiles { get; } =
        StudyBytes.Of(
            new[] { "protocol.toml", "study.toml", "pairs.csv", LockFile.Name }.Select(name =>
                KeyValuePair.Create(
                    name,
                    (ReadOnlyMemory<byte>)
                        File.ReadAllBytes(Path.Combine(ExampleStudy.SmallFolder, name))
                )
            )
        );

    private static readonly Lazy<Signer> s_author = new(() => Signer.Make("Lab Scientist One"));

    private static readonly Lazy<Signer> s_director = new(() =>
        Signer.Make("Medical Director One")
    );

    private static readonly Lazy<ReadOnlyMemory<byte>> s_unsigned = new(() => Report(StudyFiles));

    private static readonly Lazy<ReadOnlyMemory<byte>> s_signedOnce = new(() =>
        Signed(s_unsigned.Value, "author", Author)
    );

    private static readonly Lazy<ReadOnlyMemory<byte>> s_signedTwice = new(() =>
        Signed(s_signedOnce.Value, "approver", Director, DecisionRequest.Approval)
    );

    public static Signer Author => s_author.Value;

    public static Signer Director => s_director.Value;

    public static ReadOnlyMemory<byte> Unsigned => s_unsigned.Value;

    public static ReadOnlyMemory<byte> SignedOnce => s_signedOnce.Value;

    public static ReadOnlyMemory<byte> SignedTwice => s_signedTwice.Value;

    public static VerificationOptions Trusting { get; } =
        new(Anchors(Author.Certificate, Director.Certificate), []);

    public static ReadOnlyMemory<byte> Report(StudyBytes files) =>
        StudyPipeline.Render(ExampleStudy.Analyze(files), PaperSize.A4).Pdf;

    public static SigningAttempt Sign(
        ReadOnlyMemory<byte> report,
        string role,
        Signer signer,
        DecisionRequest? decision = null,
        DateTimeOffset? at = null
    )
    {
        using var key = signer.Key();
        return ReportSigning.Sign(
            report,
            new SigningOrder(role, key, at ?? Now, null, "MLS", decision, null)
        );
    }

    public static ReadOnlyMemory<byte> Signed(
        ReadOnlyMemory<byte> report,
        string role,
        Signer signer,
        DecisionRequest? decision = null
    )
    {
        var attempt = Sign(report, role, signer, decision);
        return Assert.IsType<SigningAttempt.Done>(attempt).Report;
    }

    public static TrustAnchors Anchors(params string[] certificates) =>
        TrustAnchors.Of(
            certificates.Select(text =>
            {
                Assert.True(
                    TrustFile.Read(Encoding.ASCII.GetBytes(text)).TryGet(out var file, out _)
                );
                return file;
            })
        );

    public static ReportVerification Verify(ReadOnlyMemory<byte> report) =>
        ReportVerifier.Verify(report, Trusting);

    /// <summary>The outcomes of the four parts.</summary>
    public static ImmutableArray<PartOutcome> Outcomes(ReportVerification found) =>
        [.. found.Parts.Select(part => part.Outcome)];
}

/// <summary>A person with a key.</summary>
internal sealed record Signer(ReadOnlyMemory<byte> Pkcs12, string Certificate)
{
    private const string Passphrase = "only for tests";

    public static Signer Make(
        string name,
        DateTimeOffset? until = null,
        DateTimeOffset? from = null
    )
    {
        var made = TrialCertificate.Create(
            name,
            null,
            from ?? EvidenceExample.Now.AddDays(-60),
            until ?? EvidenceExample.Now.AddDays(300),
            Passphrase,
            System.Security.Cryptography.RandomNumberGenerator.GetBytes(16)
        );
        return new Signer(made.Pkcs12, made.CertificatePem);
    }

    public SigningKey Key()
    {
        Assert.True(SigningKeyReader.Read(Pkcs12, null, Passphrase).TryGet(out var key, out _));
        return key;
    }
}
