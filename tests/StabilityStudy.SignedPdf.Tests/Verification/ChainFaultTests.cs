using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>What is wrong with a chain is told as what it is, and with which certificate.</summary>
public static class ChainFaultTests
{
    public static TheoryData<X509ChainStatusFlags> Statuses =>
        [
            .. Enum.GetValues<X509ChainStatusFlags>()
                .Where(static status => status != X509ChainStatusFlags.NoError),
        ];

    [Theory]
    [MemberData(nameof(Statuses))]
    public static void Every_status_of_the_platform_has_a_meaning(X509ChainStatusFlags status) =>
        Assert.NotEqual(ChainProblem.Other, Assert.NotNull(ChainFault.Of(status)));

    [Fact]
    public static void An_issuer_that_nobody_gave_is_missing() =>
        AssertFault(
            new CertificateWish("Mona Missing") { By = Signers.OtherAuthority },
            ChainProblem.IssuerMissing
        );

    [Fact]
    public static void One_who_issues_himself_is_not_in_the_store() =>
        AssertFault(new CertificateWish("Own Issuer") { By = null }, ChainProblem.NotInTrustStore);

    [Fact]
    public static void A_certificate_in_the_name_of_an_authority_is_not_signed_by_it()
    {
        var impostor = Signers.MakeAuthority("Trial Authority");
        var chain = Chain(new CertificateWish("Ida Impostor") { By = impostor });

        Assert.Equal(ChainOutcome.NotTrusted, chain.Outcome);
        Assert.NotEmpty(chain.Faults);
        Assert.All(chain.Faults, fault => Assert.NotEqual(ChainProblem.Other, fault.Problem));
    }

    [Fact]
    public static void One_who_is_no_authority_may_not_issue()
    {
        var chain = Chain(
            new CertificateWish("Ulla Under") { By = RsaPerson },
            RsaPerson.Certificate
        );

        Assert.Equal(ChainOutcome.NotTrusted, chain.Outcome);
        Assert.Contains(
            chain.Faults,
            fault => fault.Problem is ChainProblem.IssuerNotEntitled or ChainProblem.ForOtherUses
        );
    }

    [Fact]
    public static void A_given_certificate_that_another_issued_ends_no_chain()
    {
        var chain = SignedDocument
            .Verify(
                SignedDocument.SignedOnce,
                new VerificationOptions(Signers.Anchors(Signers.Author, Signers.OtherAuthority), [])
            )
            .Signatures[0]
            .Chain;

        Assert.Equal(
            (ChainProblem.NotInTrustStore, "Trial Authority"),
            (chain.Faults[0].Problem, chain.Faults[0].Certificate.Name)
        );
    }

    private static Signer RsaPerson { get; } = Signers.Issue("Rita Person", rsa: true);

    private static void AssertFault(CertificateWish wish, ChainProblem expected)
    {
        var fault = Assert.Single(Chain(wish).Faults);

        Assert.Equal((expected, wish.Name), (fault.Problem, fault.Certificate.Name));
    }

    private static ChainVerification Chain(
        CertificateWish wish,
        params X509Certificate2[] others
    ) => Forgery.AsAuthor(wish.Made(), adjust: by => by.Certificates.AddRange(others)).Chain;
}
