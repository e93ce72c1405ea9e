using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.LongTerm;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Tests.Tools;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>An answer about a certificate counts as a list does, where it is of the issuer or of one whom the issuer lets answer.</summary>
public static class RevocationAnswerTests
{
    private const string AnswersForIssuer = "1.3.6.1.5.5.7.3.9";
    private static readonly HandMadeAnswer s_good = new(Signers.Author, Signers.Time.AddDays(1));

    [Fact]
    public static void A_current_answer_of_the_issuer_shows_that_nothing_was_revoked()
    {
        IsShown(s_good);
        IsShown(s_good with { HasNewNames = true });
        IsShown(s_good with { NamesKey = true });
        IsShown(s_good with { Digest = HashAlgorithmName.SHA512 });
    }

    [Fact]
    public static void One_whom_the_issuer_lets_answer_may_sign() =>
        IsShown(s_good with { Delegate = Delegate(AnswersForIssuer, mayAnswer: true) });

    [Fact]
    public static void A_revoked_certificate_is_revoked()
    {
        var revoked = Signers.Time.AddHours(-1);
        var chain = Verify(s_good with { RevokedAt = revoked });

        Assert.Equal(RevocationOutcome.Revoked, chain.Revocation);
        Assert.Equal(revoked, chain.RevokedAt);
    }

    [Fact]
    public static void Where_list_and_answer_contradict_each_other_the_worst_holds()
    {
        var list = Rewritten.Value(
            RevocationList.Read(Signers.RevocationListOf(Signers.Time.AddDays(1), Signers.Time))
        );

        Assert.Equal(
            RevocationOutcome.Revoked,
            Verify((s_good with { RevokedAt = Signers.Time }).Read(), list).Revocation
        );
    }

    [Fact]
    public static void Any_other_answer_says_what_is_wrong_with_it()
    {
        Fails(RevocationListProblem.NotKnownToIssuer, s_good with { IsUnknown = true });
        Fails(RevocationListProblem.OfAnotherIssuer, s_good with { About = Signers.Approver });
        Fails(
            RevocationListProblem.OfAnotherIssuer,
            s_good with
            {
                Issuer = Signers.OtherAuthority,
            }
        );
        Fails(
            RevocationListProblem.MadeBefore,
            s_good with
            {
                ThisUpdate = Signers.Time.AddDays(-1),
            }
        );
        Fails(
            RevocationListProblem.MadeInFuture,
            s_good with
            {
                ThisUpdate = Signers.Time.AddDays(11),
            }
        );
        Fails(RevocationListProblem.OutOfDate, s_good, Signers.Time.AddDays(40));
        Fails(
            RevocationListProblem.NotSignedByIssuer,
            s_good with
            {
                Delegate = Delegate(AnswersForIssuer, mayAnswer: false),
            }
        );
        Fails(
            RevocationListProblem.NotSignedByIssuer,
            s_good with
            {
                Delegate = Delegate(HandMadeStamp.TimeStamping, mayAnswer: true),
            }
        );
        Fails(RevocationListProblem.NotSignedByIssuer, s_good with { Delegate = Signers.Approver });
        Fails(
            RevocationListProblem.SignatureNotStrong,
            s_good with
            {
                Method = CertificateWish.Sha1,
            }
        );
    }

    [Fact]
    public static void One_certified_by_another_may_not_answer()
    {
        var other = Signers.MakeAuthority(
            Signers.Authority.Certificate.GetNameInfo(X509NameType.SimpleName, false)
        );

        Fails(
            RevocationListProblem.NotSignedByIssuer,
            s_good with
            {
                Delegate = Delegate(AnswersForIssuer, mayAnswer: true, other),
            }
        );
    }

    [Fact]
    public static void What_is_not_understood_is_no_answer()
    {
        var strange = (s_good with { HasCriticalExtension = true }).Encoded();

        Assert.False(TrustFile.Read(strange).TryGet(out _, out _));
        // A refusal: status "unauthorized" and nothing else.
        Assert.False(
            TrustFile.Read(new byte[] { 0x30, 3, 0x0A, 1, 6 }).TryGet(out _, out var failure)
        );
        Assert.Contains("a refusal to answer", failure?.What, StringComparison.Ordinal);
    }

    [Fact]
    public static void Damaged_answers_are_refused_or_show_nothing()
    {
        var whole = s_good.Encoded();
        for (var i = 0; i < whole.Length; i++)
        {
            var changed = whole.ToArray();
            changed[i] ^= 1;
            if (TrustFile.Read(changed).TryGet(out var file, out _))
            {
                Assert.All(
                    file.RevocationLists,
                    statement =>
                        Assert.True(
                            Verify(statement).Revocation != RevocationOutcome.NotRevoked,
                            $"byte {i}"
                        )
                );
            }
        }
    }

    [Fact]
    public static void A_renewal_keeps_answers()
    {
        var time = RenewedDocument.FirstRenewal;
        var answer = new HandMadeAnswer(RenewedDocument.Author, time.AddDays(-1));
        var options = RenewedDocument.Trusting(time) with { RevocationLists = [answer.Read()] };
        var renewed = RenewedDocument.Renew(RenewedDocument.Signed, options, null);
        var found = RenewalTests.Verify(renewed, time);

        Assert.True(found.Holds);
        Assert.Equal(RevocationOutcome.NotRevoked, found.Signatures[0].Chain.Revocation);
        Assert.Single(ValidationStore.Read(Rewritten.Read(renewed)).Answers);
    }

    /// <summary>An answer that the command <c>openssl ocsp</c> makes.</summary>
    [Theory]
    [InlineData("V", RevocationOutcome.NotRevoked)]
    [InlineData("R", RevocationOutcome.Revoked)]
    public static async Task An_answer_of_openssl_is_understood(
        string status,
        RevocationOutcome expected
    )
    {
        using var folder = new TemporaryFolder();
        var authority = folder.Write("ca.pem", Signers.Authority.CertificatePem);
        var key = folder.Write("ca-key.pem", Signers.Authority.KeyPem);
        var about = folder.Write("about.pem", Signers.Author.CertificatePem);
        var index = folder.Write(
            "index.txt",
            Encoding.ASCII.GetBytes(
                $"{status}\t600101000000Z\t{(status == "R" ? "260101000000Z" : "")}\t{Signers.Author.Certificate.SerialNumber}\tunknown\t/CN=Ada Author\n"
            )
        );
        var file = Path.Combine(folder.FullName, "answer.der");
        var made = await OutsideTool.Run(
            "openssl",
            "ocsp",
            "-index",
            index,
            "-CA",
            authority,
            "-rsigner",
            authority,
            "-rkey",
            key,
            "-issuer",
            authority,
            "-cert",
            about,
            "-ndays",
            "30",
            "-noverify",
            "-respout",
            file
        );
        Assert.True(made.ExitCode == 0, made.Error);
        var answer = Assert.Single(
            Rewritten
                .Value(
                    TrustFile.Read(
                        await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken)
                    )
                )
                .RevocationLists
        );

        Assert.Equal(
            expected,
            Forgery
                .AsAuthor(
                    Signers.Author,
                    new VerificationOptions(Signers.Trust, [answer])
                    {
                        Now = answer.ThisUpdate.AddMinutes(1),
                    },
                    by => by.Certificates.Add(Signers.Authority.Certificate)
                )
                .Chain.Revocation
        );
    }

    private static Signer Delegate(string purpose, bool mayAnswer, Signer? by = null) =>
        new CertificateWish("Trial Answers")
        {
            By = by ?? Signers.Authority,
            Purposes = [purpose],
            Extensions = mayAnswer
                ? [new X509Extension("1.3.6.1.5.5.7.48.1.5", [5, 0], critical: false)]
                : [],
        }.Made();

    private static void IsShown(HandMadeAnswer answer)
    {
        var chain = Verify(answer);

        Assert.Equal(RevocationOutcome.NotRevoked, chain.Revocation);
        Assert.Empty(chain.RevocationFaults);
    }

    private static void Fails(
        RevocationListProblem expected,
        HandMadeAnswer answer,
        DateTimeOffset? now = null
    )
    {
        var chain = Verify(now ?? Signers.Time.AddDays(10), answer.Read());

        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
        Assert.Equal(expected, Assert.Single(chain.RevocationFaults).Problem);
    }

    private static ChainVerification Verify(HandMadeAnswer answer) => Verify(answer.Read());

    private static ChainVerification Verify(params RevocationStatement[] statements) =>
        Verify(Signers.Time.AddDays(10), statements);

    private static ChainVerification Verify(
        DateTimeOffset now,
        params RevocationStatement[] statements
    ) =>
        Forgery
            .AsAuthor(
                Signers.Author,
                new VerificationOptions(Signers.Trust, [.. statements]) { Now = now },
                by => by.Certificates.Add(Signers.Authority.Certificate)
            )
            .Chain;
}
