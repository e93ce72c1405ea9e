using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A signed lock is worth as much as its signer: verify asks whom the trust store vouches for.</summary>
[Trait("lane", "slow")]
public sealed class LockTrustTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void A_signer_in_the_trust_store_is_trusted()
    {
        var part = Lock(EvidenceExample.Trusting);

        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Assert.Contains("is trusted by the given trust store", part.Sentences[1], Comparison);
    }

    [Fact]
    public void Without_a_trust_store_it_is_not_checked()
    {
        var part = Lock(EvidenceExample.WithoutTrust);

        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        Assert.Contains("no trust store was given", part.Sentences[0], Comparison);
    }

    [Fact]
    public void A_signer_whom_nobody_vouches_for_fails()
    {
        var part = Lock(
            EvidenceExample.Trusting with
            {
                Anchors = EvidenceExample.Anchors(EvidenceExample.Director.Certificate),
            }
        );

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(
            "Lab Scientist One, who signed lock 1, is not trusted by the given trust store: Lab Scientist One vouches for itself",
            part.Sentences[0],
            Comparison
        );
    }

    [Fact]
    public void A_signature_that_is_not_right_is_worse_than_none()
    {
        var report = EvidenceExample.Report(
            EvidenceExample.StudyFiles.Edited(LockFile.Name, "by = \"LS1\"", "by = \"MD1\"")
        );
        var part = ReportVerifier.Verify(report, EvidenceExample.Trusting).Parts[3];

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains("does not fit it", part.Sentences[0], Comparison);
    }

    [Fact]
    public void A_lock_signed_by_a_web_server_is_no_signed_lock()
    {
        var files = EvidenceExample.StudyFiles;
        Assert.True(
            LockFile.Read(files.Files[LockFile.Name]).TryGet(out var locks) && locks.All.Length == 1
        );
        var honest = locks.All[0];
        var forged = honest with { Signature = [.. WebServerSignature(honest.Statement())] };
        var part = ReportVerifier
            .Verify(
                EvidenceExample.Report(
                    new(files.Files.SetItem(LockFile.Name, LockFile.With(StoredLocks.None, forged)))
                ),
                EvidenceExample.Trusting
            )
            .Parts[3];

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(
            "The proof of lock 1: the certificate is not meant for signing documents.",
            part.Sentences
        );
    }

    [Fact]
    public void A_signer_whose_certificate_is_over_vouches_for_the_claimed_time_only()
    {
        var part = Lock(EvidenceExample.Trusting with { Now = EvidenceExample.Now.AddDays(301) });

        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        Assert.Contains("valid at the claimed time only", part.Sentences[0], Comparison);
    }

    [Fact]
    public void What_the_record_says_against_the_lock_fails_here_too()
    {
        var files = EvidenceExample.LockedByClock.With(
            StudyRecord.Name,
            StudyRecord.Next(
                default,
                new RecordEntry(
                    RecordAction.Lock,
                    EvidenceExample.Now,
                    "LS1",
                    "stability-study",
                    [],
                    [new FileHash(LockFile.Name, "another")]
                )
            )
        );
        var part = ReportVerifier
            .Verify(EvidenceExample.Report(files), EvidenceExample.Trusting)
            .Parts[3];

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains("is not the file that the record", part.Sentences[0], Comparison);
    }

    [Fact]
    public void Nobody_locks_with_a_clock_behind_the_last_lock()
    {
        var attempt = ProtocolLocking.Lock(
            EvidenceExample.StudyFiles.Edited("protocol.toml", "percent = 8.0", "percent = 8.1"),
            "LS1",
            EvidenceExample.LockedAt.AddMinutes(-1),
            "a limit was corrected"
        );

        Assert.Equal(LockRefusal.BeforeLastLock, Assert.IsType<LockAttempt.Refused>(attempt).Why);
    }

    private static byte[] WebServerSignature(ReadOnlyMemory<byte> statement)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=www.lab.example", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(
            new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], critical: false)
        );
        using var certificate = request.CreateSelfSigned(
            EvidenceExample.Now.AddYears(-1),
            EvidenceExample.Now.AddYears(1)
        );
        var named = new AsnWriter(AsnEncodingRules.DER);
        using (named.PushSequence())
        using (named.PushSequence())
        using (named.PushSequence())
        {
            named.WriteOctetString(SHA256.HashData(certificate.RawData));
        }

        var container = new SignedCms(new ContentInfo(statement.ToArray()), detached: true);
        var signer = new CmsSigner(certificate)
        {
            DigestAlgorithm = new Oid("2.16.840.1.101.3.4.2.1"),
            IncludeOption = X509IncludeOption.EndCertOnly,
        };
        signer.SignedAttributes.Add(
            new AsnEncodedData(new Oid("1.2.840.113549.1.9.16.2.47"), named.Encode())
        );
        container.ComputeSignature(signer, silent: true);
        return container.Encode();
    }

    private static VerifiedPart Lock(VerificationOptions options) =>
        ReportVerifier.Verify(EvidenceExample.Unsigned, options).Parts[3];
}
