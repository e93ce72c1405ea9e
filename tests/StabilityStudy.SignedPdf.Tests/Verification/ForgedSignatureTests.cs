using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Signatures over the right bytes, but not as they must be made.</summary>
public static class ForgedSignatureTests
{
    private static byte[] Signed => SignedDocument.SignedOnce;

    [Fact]
    public static void A_signature_made_anew_by_the_rules_is_right() =>
        Assert.Empty(
            Problems(Forgery.Resigned(Signed, "author", Signers.Author, Signers.Author.Certificate))
        );

    [Fact]
    public static void A_signature_by_another_shows_who_it_was()
    {
        var other = Signers.Issue("Mallory Other", rsa: false, by: Signers.OtherAuthority);
        var signature = SignedDocument
            .Verify(Forgery.Resigned(Signed, "author", other, other.Certificate))
            .Signatures[0];

        Assert.Empty(signature.Problems);
        Assert.Equal("Ada Author", signature.SignerName);
        Assert.Equal("Mallory Other", signature.Signer?.Name);
        Assert.Equal(ChainOutcome.NotTrusted, signature.Chain.Outcome);
    }

    [Fact]
    public static void No_word_about_the_signing_certificate_is_found() =>
        Assert.Equal(
            [SignatureProblem.SigningCertificateMissing],
            Problems(
                Forgery.Resigned(
                    Signed,
                    "author",
                    Signers.Author,
                    named: null,
                    static signer =>
                        signer.SignedAttributes.Add(new Pkcs9SigningTime(Signers.Time.UtcDateTime))
                )
            )
        );

    [Fact]
    public static void A_signed_attribute_that_names_another_certificate_is_found() =>
        Assert.Equal(
            [SignatureProblem.SigningCertificateMismatch],
            Problems(
                Forgery.Resigned(Signed, "author", Signers.Author, Signers.Approver.Certificate)
            )
        );

    [Fact]
    public static void A_weak_digest_is_found() =>
        Assert.Contains(
            SignatureProblem.AlgorithmNotSupported,
            Problems(
                Forgery.Resigned(
                    Signed,
                    "author",
                    Signers.Author,
                    Signers.Author.Certificate,
                    static signer => signer.DigestAlgorithm = new Oid("1.3.14.3.2.26")
                )
            )
        );

    [Fact]
    public static void A_signature_without_its_certificate_is_found() =>
        Assert.Single(
            Problems(
                Forgery.Resigned(
                    Signed,
                    "author",
                    Signers.Author,
                    Signers.Author.Certificate,
                    static signer =>
                    {
                        signer.IncludeOption = X509IncludeOption.None;
                        signer.Certificates.Add(Signers.Authority.Certificate);
                    }
                )
            ),
            SignatureProblem.CertificateMissing
        );

    [Fact]
    public static void A_signature_of_content_of_its_own_is_found() =>
        Assert.Equal(
            [SignatureProblem.ContainerMalformed],
            Problems(
                Forgery.Resigned(
                    Signed,
                    "author",
                    Signers.Author,
                    Signers.Author.Certificate,
                    detached: false
                )
            )
        );

    [Fact]
    public static void A_certificate_for_other_uses_is_found() =>
        AssertCertificate(
            Signers.Issue("Ed Encrypter", rsa: true, usage: X509KeyUsageFlags.KeyEncipherment),
            SignatureProblem.KeyUsageLacksSigning
        );

    [Fact]
    public static void A_certificate_not_valid_yet_is_found() =>
        AssertCertificate(
            Signers.Issue("Lea Later", rsa: true, from: Signers.Time.AddDays(1)),
            SignatureProblem.CertificateNotYetValid
        );

    [Fact]
    public static void A_certificate_valid_no_more_is_found() =>
        AssertCertificate(
            Signers.Issue("Otto Over", rsa: false, to: Signers.Time.AddDays(-1)),
            SignatureProblem.CertificateExpired
        );

    [Fact]
    public static void A_short_key_is_found()
    {
        using var key = RSA.Create(1024);
        var request = new CertificateRequest(
            "CN=Sven Short",
            key,
            HashAlgorithmName.SHA256,
            RSASignaturePadding.Pkcs1
        );
        var signer = new Signer(request.CreateSelfSigned(Signers.Start, Signers.End), key);

        AssertCertificate(signer, SignatureProblem.KeyNotStrong);
    }

    [Fact]
    public static void A_signature_without_signed_attributes_is_found() =>
        Assert.Equal(
            [SignatureProblem.ContainerMalformed],
            Problems(Forgery.Resigned(Signed, "author", Signers.Author, named: null))
        );

    [Fact]
    public static void A_signature_without_a_date_is_found()
    {
        var changed = Tampering.Replaced(
            Signed,
            "/M (D:20260304093000-05'00)",
            "/M (D:2026-03-04 9:30:00 ) "
        );

        Assert.Equal(
            [SignatureProblem.SigningTimeMissing],
            Problems(
                Forgery.Resigned(changed, "author", Signers.Author, Signers.Author.Certificate)
            )
        );
    }

    [Fact]
    public static void Another_name_of_the_algorithm_is_found()
    {
        // ecdsa-with-SHA256 becomes ecdsa-with-SHA384, which some libraries take for the same.
        var signed = SignedDocument.Sign(SignedDocument.Unsigned, SignedDocument.Approver);

        AssertContainer(signed, "approver", "2A8648CE3D040302", "2A8648CE3D040303");
    }

    [Fact]
    public static void An_issuer_in_other_letters_is_found() =>
        AssertContainer(Signed, "author", "547269616C20417574", "747269616C20417574");

    private static void AssertContainer(byte[] file, string field, string old, string other)
    {
        var text = Convert.ToHexString(Forgery.Container(file, field));
        var (start, _) = Forgery.Gap(file, field);
        var place = start + 1 + text.LastIndexOf(old, StringComparison.Ordinal);
        var verification = SignedDocument.Verify(Tampering.Replaced(file, old, other, place));

        Assert.NotEmpty(verification.Signatures[0].Problems);
        Assert.False(verification.Holds);
    }

    private static void AssertCertificate(Signer signer, SignatureProblem problem) =>
        Assert.Equal(
            [problem],
            Problems(Forgery.Resigned(Signed, "author", signer, signer.Certificate))
        );

    private static System.Collections.Immutable.ImmutableArray<SignatureProblem> Problems(
        byte[] file
    )
    {
        var verification = SignedDocument.Verify(file);
        var problems = verification.Signatures[0].Problems;
        Assert.Equal(problems.IsEmpty, verification.Holds);
        return problems;
    }
}
