using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>No reader is shown the name of a member of the code.</summary>
public sealed class ProblemWordsTests
{
    public static TheoryData<SignatureProblem> OfSignatures =>
        [.. Enum.GetValues<SignatureProblem>()];

    public static TheoryData<DocumentProblem> OfDocuments => [.. Enum.GetValues<DocumentProblem>()];

    public static TheoryData<ChainProblem> OfChains => [.. Enum.GetValues<ChainProblem>()];

    public static TheoryData<RevocationListProblem> OfLists =>
        [.. Enum.GetValues<RevocationListProblem>()];

    [Theory]
    [MemberData(nameof(OfSignatures))]
    public void A_problem_of_a_signature_has_words(SignatureProblem problem) =>
        Assert.Contains(' ', ProblemWords.Of(problem));

    [Theory]
    [MemberData(nameof(OfDocuments))]
    public void A_problem_of_a_document_has_words(DocumentProblem problem) =>
        Assert.Contains(' ', ProblemWords.Of(problem));

    [Theory]
    [MemberData(nameof(OfChains))]
    public void A_problem_of_a_chain_says_whose_certificate_it_is(ChainProblem problem)
    {
        var words = TrustWords.Of(new ChainFault(problem, s_certificate), "--trust-time");

        Assert.Contains("Ida Invented", words, StringComparison.Ordinal);
        Assert.DoesNotContain(problem.ToString(), words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_issuer_says_which_certificate_to_give() =>
        Assert.StartsWith(
            "the trust store lacks the certificate of the issuer CN=Invented Issuer: give the root certificate of CN=Invented Issuer with --trust",
            TrustWords.Of(new ChainFault(ChainProblem.IssuerMissing, s_certificate), "--trust"),
            StringComparison.Ordinal
        );

    [Theory]
    [MemberData(nameof(OfLists))]
    public void A_problem_of_a_list_says_whose_list_it_is(RevocationListProblem problem)
    {
        var list = problem == RevocationListProblem.Missing ? null : List();
        var words = TrustWords.Of(new RevocationFault(problem, s_certificate, list));

        Assert.Contains("Ida Invented", words, StringComparison.Ordinal);
        Assert.Contains(
            list is null ? "ask its issuer CN=Invented Issuer" : "by CN=Some Authority of 2026",
            words,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(problem.ToString(), words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_of_nobody_who_signed_is_told()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                RevocationLists = [List()],
            }
        );

        Assert.Equal(PartOutcome.Holds, found.Parts[0].Outcome);
        Assert.Contains(
            found.Parts[0].Sentences,
            text =>
                text.Contains(
                    "by CN=Some Authority of 2026-06-01 15:30:00 +00:00 is of no issuer",
                    StringComparison.Ordinal
                )
        );
    }

    private static readonly CertificateFacts s_certificate = new(
        "Ida Invented",
        "CN=Ida Invented",
        "CN=Invented Issuer",
        "01",
        "00",
        "11",
        EvidenceExample.Now,
        EvidenceExample.Now,
        IsSelfIssued: false,
        MaySign: true
    );

    private static RevocationStatement List()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var name = new X500DistinguishedName("CN=Some Authority");
        var request = new CertificateRequest(name, key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(
            new X509SubjectKeyIdentifierExtension(request.PublicKey, false)
        );
        using var authority = request.CreateSelfSigned(
            EvidenceExample.Now.AddYears(-1),
            EvidenceExample.Now.AddYears(1)
        );
        var bytes = new CertificateRevocationListBuilder().Build(
            authority,
            1,
            EvidenceExample.Now.AddDays(30),
            HashAlgorithmName.SHA256,
            thisUpdate: EvidenceExample.Now
        );
        Assert.True(TrustFile.Read(bytes).TryGet(out var file, out _));
        return Assert.Single(file.RevocationLists);
    }
}
