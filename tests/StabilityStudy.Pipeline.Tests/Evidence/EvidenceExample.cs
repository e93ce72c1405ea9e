using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
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

    public static DateTimeOffset LockedAt { get; } =
        new(2026, 5, 1, 13, 20, 0, TimeSpan.FromHours(-5));

    /// <summary>The study as it stands in the folder: locked by a computer's clock alone, and without a record.</summary>
    public static StudyBytes LockedByClock { get; } =
        StudyBytes.Of(
            new[] { "protocol.toml", "study.toml", "pairs.csv", LockFile.Name }.Select(name =>
                KeyValuePair.Create(
                    name,
                    (ReadOnlyMemory<byte>)
                        File.ReadAllBytes(Path.Combine(ExampleStudy.SmallFolder, name))
                )
            )
        );

    /// <summary>The study before it was locked.</summary>
    public static StudyBytes Unlocked { get; } = new(LockedByClock.Files.Remove(LockFile.Name));

    private static readonly Lazy<StudyBytes> s_studyFiles = new(() =>
        Locked(Unlocked, LockedAt, Author)
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

    /// <summary>The study with a lock that its author signed, and a record that names it: all that can be proved is.</summary>
    public static StudyBytes StudyFiles => s_studyFiles.Value;

    public static Signer Author => s_author.Value;

    public static Signer Director => s_director.Value;

    public static ReadOnlyMemory<byte> Unsigned => s_unsigned.Value;

    public static ReadOnlyMemory<byte> SignedOnce => s_signedOnce.Value;

    public static ReadOnlyMemory<byte> SignedTwice => s_signedTwice.Value;

    public static VerificationOptions Trusting { get; } =
        new(Anchors(Author.Certificate, Director.Certificate), []) { Now = Now };

    public static VerificationOptions WithoutTrust { get; } =
        VerificationOptions.WithoutTrust with
        {
            Now = Now,
        };

    /// <summary>The study with a further lock and the line about it in the record, as the program writes both.</summary>
    public static StudyBytes Locked(
        StudyBytes files,
        DateTimeOffset at,
        Signer? signer = null,
        string? reason = null
    )
    {
        using var key = signer?.Key();
        var locked = Assert.IsType<LockAttempt.Locked>(
            ProtocolLocking.Lock(files, "LS1", at, reason, "an example", key)
        );
        var record = files.Files.GetValueOrDefault(StudyRecord.Name);
        var line = StudyRecord.Next(
            record,
            new RecordEntry(
                RecordAction.Lock,
                at,
                "LS1",
                ToolVersion.Named,
                [new FileHash(StudyBytes.ProtocolName, locked.Lock.ProtocolSha256)],
                [new FileHash(LockFile.Name, InputDigest.Sha256(locked.LockFile.Span))]
            )
        );
        return files
            .With(LockFile.Name, locked.LockFile)
            .With(LockedProtocols.StoredName(locked.Lock.Number), locked.Copy)
            .With(StudyRecord.Name, (byte[])[.. record.Span, .. line.Span]);
    }

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
            key,
            new SigningOrder(role, at ?? Now, null, "MLS", decision),
            null
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
/// <param name="KeyFile">Key and certificate, PEM without a passphrase: to open a protected one hundreds of times costs more than all else.</param>
/// <param name="Certificate">The certificate, PEM.</param>
internal sealed record Signer(ReadOnlyMemory<byte> KeyFile, string Certificate)
{
    /// <summary>One key with certificates for several names.</summary>
    public static ImmutableArray<Signer> OfOneKey(params string[] names)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        return [.. names.Select(name => Certified(key, name, null, null))];
    }

    public static Signer Make(
        string name,
        DateTimeOffset? until = null,
        DateTimeOffset? from = null
    )
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        return Certified(key, name, from, until);
    }

    public SigningKey Key()
    {
        Assert.True(SigningKeyReader.Read(KeyFile, null, null).TryGet(out var key, out _));
        return key;
    }

    private static Signer Certified(
        ECDsa key,
        string name,
        DateTimeOffset? from,
        DateTimeOffset? until
    )
    {
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        using var certificate = request.CreateSelfSigned(
            from ?? EvidenceExample.Now.AddDays(-60),
            until ?? EvidenceExample.Now.AddDays(300)
        );
        var pem = certificate.ExportCertificatePem();
        return new Signer(
            Encoding.ASCII.GetBytes(key.ExportPkcs8PrivateKeyPem() + "\n" + pem + "\n"),
            pem
        );
    }
}
