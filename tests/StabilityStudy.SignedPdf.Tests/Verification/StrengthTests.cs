using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Keys, digests and uses of certificates that nobody should rely on, in each place where they could stand.</summary>
public static class StrengthTests
{
    private const string Sha1 = "1.3.14.3.2.26";
    private const string Md5 = "1.2.840.113549.2.5";
    private const string ServerAuthentication = "1.3.6.1.5.5.7.3.1";
    private const string ClientAuthentication = "1.3.6.1.5.5.7.3.2";
    private const string CodeSigning = "1.3.6.1.5.5.7.3.3";
    private static readonly DateTimeOffset s_stamped = Signers.Time.AddMinutes(1);
    private static readonly byte[] s_statement = Encoding.ASCII.GetBytes("protocol lock\n");

    public static TheoryData<string> WeakKeys => ["rsa1024", "secp256k1", "brainpoolP256r1"];

    public static TheoryData<string> SigningUses =>
        [
            "1.3.6.1.5.5.7.3.4",
            "1.3.6.1.5.5.7.3.36",
            "2.5.29.37.0",
            "1.2.840.113583.1.1.5",
            "1.3.6.1.4.1.311.10.3.12",
            ClientAuthentication,
        ];

    [Theory]
    [MemberData(nameof(WeakKeys))]
    public static void A_weak_key_of_the_signer_is_refused(string kind)
    {
        using var key = Key(kind);
        var signer = new CertificateWish("Wanda Weak") { Key = key }.Made();

        Assert.Contains(SignatureProblem.KeyNotStrong, OfReport(signer).Problems);
        Assert.Contains(SignatureProblem.KeyNotStrong, OfStatement(signer).Problems);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public static void A_certificate_issued_with_an_old_digest_is_refused(bool md5)
    {
        var signer = new CertificateWish("Olaf Old")
        {
            Method = md5 ? CertificateWish.Md5 : CertificateWish.Sha1,
        }.Made();

        Assert.Equal([SignatureProblem.CertificateNotStrong], OfReport(signer).Problems);
        Assert.Equal([SignatureProblem.CertificateNotStrong], OfStatement(signer).Problems);
    }

    [Theory]
    [InlineData("rsa1024", false, ChainProblem.KeyNotStrong)]
    [InlineData("rsa2048", true, ChainProblem.SignatureNotStrong)]
    public static void A_weak_certificate_between_signer_and_anchor_is_refused(
        string kind,
        bool sha1,
        ChainProblem expected
    )
    {
        using var key = Key(kind);
        var between = new CertificateWish("Middle Authority")
        {
            Key = key,
            IsAuthority = true,
            Method = sha1 ? CertificateWish.Sha1 : null,
        }.Made();
        var signer = new CertificateWish("Mia Middle") { By = between }.Made();
        var chain = OfReport(signer, With(between)).Chain;

        Assert.Equal(ChainOutcome.NotTrusted, chain.Outcome);
        var fault = Assert.Single(chain.Faults);
        Assert.Equal((expected, "Middle Authority"), (fault.Problem, fault.Certificate.Name));
    }

    [Theory]
    [InlineData("rsa2048", true, ChainOutcome.Trusted)]
    [InlineData("rsa1024", false, ChainOutcome.NotTrusted)]
    public static void An_anchor_is_judged_by_its_key_and_not_by_its_own_signature(
        string kind,
        bool sha1,
        ChainOutcome expected
    )
    {
        using var key = Key(kind);
        var anchor = new CertificateWish("Grown Old Authority")
        {
            By = null,
            Key = key,
            IsAuthority = true,
            Method = sha1 ? CertificateWish.Sha1 : null,
        }.Made();
        var signer = new CertificateWish("Nora New") { By = anchor }.Made();
        var options = new VerificationOptions(Signers.Anchors(anchor), []);

        Assert.Equal(expected, OfReport(signer, options: options).Chain.Outcome);
    }

    [Theory]
    [InlineData(ServerAuthentication)]
    [InlineData(HandMadeStamp.TimeStamping)]
    [InlineData(CodeSigning)]
    public static void A_certificate_for_other_things_than_documents_is_refused(string purpose)
    {
        var signer = new CertificateWish("Web Server") { Purposes = [purpose] }.Made();

        Assert.Equal([SignatureProblem.KeyUsageLacksSigning], OfReport(signer).Problems);
        Assert.Equal([SignatureProblem.KeyUsageLacksSigning], OfStatement(signer).Problems);
        Assert.Equal(
            SigningKeyProblem.KeyUsageLacksSigning,
            signer.SigningKey().Certificate.ProblemAt(Signers.Time)
        );
    }

    [Theory]
    [MemberData(nameof(SigningUses))]
    public static void A_certificate_that_names_a_person_may_sign(string purpose)
    {
        var only = new CertificateWish("Paula Person") { Purposes = [purpose] }.Made();
        var both = new CertificateWish("Petra Person")
        {
            Purposes = [ServerAuthentication, purpose],
        }.Made();

        Assert.Empty(OfReport(only).Problems);
        Assert.Empty(OfReport(both).Problems);
    }

    [Fact]
    public static void An_authority_for_web_servers_vouches_for_no_signer()
    {
        var between = new CertificateWish("Server Authority")
        {
            Key = RSA.Create(2048),
            IsAuthority = true,
            Purposes = [ServerAuthentication],
        }.Made();
        var signer = new CertificateWish("Sam Server") { By = between }.Made();

        Assert.Contains(
            OfReport(signer, With(between)).Chain.Faults,
            fault =>
                fault.Problem == ChainProblem.ForOtherUses
                && fault.Certificate.Name == "Server Authority"
        );
    }

    [Fact]
    public static void A_signature_with_PSS_is_right_with_a_strong_digest_only()
    {
        var signer = new CertificateWish("Pia Pss")
        {
            Key = RSA.Create(2048),
            Method = CertificateWish.Pss,
        }.Made();
        Action<CmsSigner> pss = by => by.SignaturePadding = RSASignaturePadding.Pss;
        var strong = OfReport(signer, pss);

        Assert.Empty(strong.Problems);
        Assert.Equal(ChainOutcome.Trusted, strong.Chain.Outcome);
        Assert.Empty(OfStatement(signer, pss).Problems);
        Assert.Equal(
            [SignatureProblem.AlgorithmNotSupported],
            OfReport(signer, pss + (by => by.DigestAlgorithm = new Oid(Sha1))).Problems
        );
    }

    [Theory]
    [InlineData(Sha1)]
    [InlineData(Md5)]
    public static void An_old_digest_of_the_signature_is_refused(string digest)
    {
        var signer = new CertificateWish("Dora Digest") { Key = RSA.Create(2048) }.Made();
        Action<CmsSigner> old = by => by.DigestAlgorithm = new Oid(digest);

        Assert.Equal([SignatureProblem.AlgorithmNotSupported], OfReport(signer, old).Problems);
        Assert.Equal([SignatureProblem.AlgorithmNotSupported], OfStatement(signer, old).Problems);
    }

    [Fact]
    public static void A_signer_named_by_a_key_identifier_is_refused_in_its_own_words()
    {
        var file = Forgery.Resigned(
            SignedDocument.SignedOnce,
            "author",
            Signers.Author,
            Signers.Author.Certificate,
            identified: SubjectIdentifierType.SubjectKeyIdentifier
        );

        Assert.Equal(
            [SignatureProblem.SignerNamedByKey],
            SignedDocument.Verify(file).Signatures[0].Problems
        );
    }

    [Fact]
    public static void Nothing_may_follow_the_signature_of_a_statement()
    {
        var right = Forgery.Signature(s_statement, Signers.Author, Signers.Author.Certificate);

        Assert.True(Statement(right).Holds);
        Assert.Equal([SignatureProblem.ContainerMalformed], Statement([.. right, 0]).Problems);
    }

    [Fact]
    public static void The_signature_of_a_statement_counts_only_while_its_certificate_is_valid()
    {
        var late = new CertificateWish("Otto Over") { To = Signers.Time.AddDays(-1) }.Made();

        Assert.Equal([SignatureProblem.CertificateExpired], OfStatement(late).Problems);
    }

    [Fact]
    public static void A_strong_time_stamp_is_right()
    {
        var signature = Stamped(new HandMadeStamp(s_stamped));

        Assert.Empty(signature.Problems);
        Assert.Equal(s_stamped, signature.TimeStamp?.ProvenTime);
    }

    [Fact]
    public static void A_time_stamp_with_an_old_digest_is_refused()
    {
        var rsa = new CertificateWish("Rsa Time")
        {
            Key = RSA.Create(2048),
            Purposes = [HandMadeStamp.TimeStamping],
        }.Made();

        AssertWeak(new HandMadeStamp(s_stamped) { HasOldImprint = true });
        AssertWeak(new HandMadeStamp(s_stamped) { HasOldDigest = true, Authority = rsa });
    }

    [Theory]
    [MemberData(nameof(WeakKeys))]
    public static void A_time_stamp_with_a_weak_key_is_refused(string kind)
    {
        using var key = Key(kind);
        AssertWeak(
            new HandMadeStamp(s_stamped)
            {
                Authority = new CertificateWish("Weak Time")
                {
                    Key = key,
                    Purposes = [HandMadeStamp.TimeStamping],
                }.Made(),
            }
        );
    }

    [Fact]
    public static void An_authority_of_time_issued_with_an_old_digest_is_refused()
    {
        var old = new CertificateWish("Old Time")
        {
            Method = CertificateWish.Sha1,
            Purposes = [HandMadeStamp.TimeStamping],
        }.Made();
        var between = new CertificateWish("Old Middle")
        {
            Key = RSA.Create(2048),
            IsAuthority = true,
            Method = CertificateWish.Sha1,
        }.Made();
        var below = new CertificateWish("New Time")
        {
            By = between,
            Purposes = [HandMadeStamp.TimeStamping],
        }.Made();
        var chain = Stamped(
            new HandMadeStamp(s_stamped) { Authority = below, Others = [between.Certificate] }
        ).TimeStamp?.Chain;

        AssertWeak(new HandMadeStamp(s_stamped) { Authority = old });
        Assert.Equal(ChainOutcome.NotTrusted, chain?.Outcome);
        Assert.Contains(chain!.Faults, fault => fault.Problem == ChainProblem.SignatureNotStrong);
    }

    private static void AssertWeak(HandMadeStamp stamp)
    {
        Assert.Equal([SignatureProblem.TimeStampNotStrong], Stamped(stamp).Problems);
        Assert.Null(
            StatementVerifier.TimeStamp(
                s_statement,
                stamp.Over(s_statement),
                Signers.Trusting,
                out var problem
            )
        );
        Assert.Equal(SignatureProblem.TimeStampNotStrong, problem);
    }

    private static SignatureVerification Stamped(HandMadeStamp stamp) =>
        Forgery.AsAuthor(Signers.Author, after: stamp.On);

    private static Action<CmsSigner> With(Signer between) =>
        by => by.Certificates.Add(between.Certificate);

    private static SignatureVerification OfReport(
        Signer signer,
        Action<CmsSigner>? adjust = null,
        VerificationOptions? options = null
    ) => Forgery.AsAuthor(signer, options, adjust);

    private static StatementSignature OfStatement(
        Signer signer,
        Action<CmsSigner>? adjust = null
    ) => Statement(Forgery.Signature(s_statement, signer, signer.Certificate, adjust));

    private static StatementSignature Statement(byte[] signature) =>
        StatementVerifier.Signature(s_statement, signature, Signers.Time, Signers.Trusting);

    private static AsymmetricAlgorithm Key(string kind) =>
        kind switch
        {
            "rsa1024" => RSA.Create(1024),
            "rsa2048" => RSA.Create(2048),
            var curve => ECDsa.Create(ECCurve.CreateFromFriendlyName(curve)),
        };
}
