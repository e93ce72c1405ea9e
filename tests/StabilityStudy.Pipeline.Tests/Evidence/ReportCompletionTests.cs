using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Signatures of keys that this program never sees: prepared, made by something else, and put in.</summary>
[Trait("lane", "slow")]
public sealed class ReportCompletionTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly Token s_author = Token.Of("Lab Scientist One", rsa: true);
    private static readonly Token s_director = Token.Of("Medical Director One", rsa: false);

    private static readonly Lazy<SigningAttempt.Prepared> s_prepared = new(() =>
        Prepare(EvidenceExample.Unsigned, "author", s_author)
    );

    [Fact]
    public void Two_tokens_sign_one_report_and_it_verifies_as_if_their_keys_had_been_files()
    {
        var author = Done(Complete(EvidenceExample.Unsigned, s_prepared.Value, s_author));
        var approval = Prepare(author.Report, "approver", s_director, DecisionRequest.Approval);
        var approver = Done(Complete(author.Report, approval, s_director));

        var found = ReportVerifier.Verify(
            approver.Report,
            EvidenceExample.Trusting with
            {
                Anchors = EvidenceExample.Anchors(
                    s_author.Pem,
                    s_director.Pem,
                    EvidenceExample.Author.Certificate
                ),
            }
        );

        Assert.Equal("Lab Scientist One (author)", author.By);
        Assert.Equal(["approver"], author.StillMissing);
        Assert.Null(author.Decision);
        Assert.True(approver.SignedBefore);
        Assert.StartsWith("approved", approver.Decision, Comparison);
        Assert.Equal(
            EvidenceExample.Outcomes(EvidenceExample.Verify(EvidenceExample.SignedTwice)),
            EvidenceExample.Outcomes(found)
        );
    }

    [Fact]
    public void An_answer_in_pem_is_the_same_answer()
    {
        var answer = s_author.Answer(s_prepared.Value.Document.ToSign);
        var pem = Encoding.ASCII.GetBytes(PemEncoding.WriteString("CMS", answer));

        Assert.Equal(
            Done(CompleteWith(answer)).Report.ToArray(),
            Done(CompleteWith(pem)).Report.ToArray()
        );
    }

    [Fact]
    public void What_is_prepared_does_not_pass_as_signed_and_nobody_signs_over_it()
    {
        var prepared = s_prepared.Value.Document.Bytes;
        var found = EvidenceExample.Verify(prepared);

        Assert.Equal(PartOutcome.Fails, found.Parts[0].Outcome);
        Assert.Contains(
            found.Parts[0].Sentences,
            text => text.Contains("prepared, but not signed yet", Comparison)
        );
        foreach (var role in new[] { "author", "approver" })
        {
            Assert.Contains(
                "only prepared for a signature",
                Why(EvidenceExample.Sign(prepared, role, EvidenceExample.Director)),
                Comparison
            );
        }
    }

    [Fact]
    public void The_rules_of_signing_hold_for_what_is_prepared()
    {
        Assert.Contains(
            "signs before",
            Why(PrepareAny(EvidenceExample.Unsigned, "approver", s_director)),
            Comparison
        );
        Assert.Contains(
            "--decision",
            Why(PrepareAny(EvidenceExample.SignedOnce, "approver", s_director)),
            Comparison
        );
        Assert.Contains(
            "no longer valid",
            Why(
                PrepareAny(
                    EvidenceExample.Unsigned,
                    "author",
                    s_author,
                    at: EvidenceExample.Now.AddYears(9)
                )
            ),
            Comparison
        );
    }

    public static TheoryData<string, string> WrongAnswers =>
        new()
        {
            { "nothing", "no CMS signature" },
            { "cut", "no CMS signature" },
            { "ber", "written in BER" },
            { "other bytes", "signs other bytes than those of to-sign.bin" },
            { "attached", "not a CMS signature by one signer, detached" },
            { "two signers", "not a CMS signature by one signer, detached" },
            { "no attributes", "with signed attributes" },
            { "not named", "does not name its certificate" },
            { "sha-1", "Sign with SHA-256" },
            { "key identifier", "without -keyid" },
            { "no certificate", "without -nocerts" },
            { "damaged", "was not made with the key of its certificate" },
            { "other certificate", "signed with another certificate (Medical Director One" },
            { "same name", "signed with another certificate (Lab Scientist One" },
        };

    [Theory]
    [MemberData(nameof(WrongAnswers))]
    public void A_wrong_answer_is_refused_in_its_own_words(string kind, string expected)
    {
        var toSign = s_prepared.Value.Document.ToSign;
        var right = s_author.Answer(toSign);
        var answer = kind switch
        {
            "nothing" => "no signature at all"u8.ToArray(),
            "cut" => right[..^5],
            "ber" => InBer(right),
            "other bytes" => s_author.Answer(toSign[1..]),
            "attached" => s_author.Answer(toSign, isDetached: false),
            "two signers" => s_author.Answer(toSign, also: s_director),
            "no attributes" => s_author.Answer(toSign, attributes: false),
            "not named" => s_author.Answer(toSign, isNamed: false),
            "sha-1" => s_author.Answer(toSign, digest: "1.3.14.3.2.26"),
            "key identifier" => s_author.Answer(
                toSign,
                by: SubjectIdentifierType.SubjectKeyIdentifier
            ),
            "no certificate" => s_author.Answer(toSign, include: X509IncludeOption.None),
            "damaged" => [.. right[..^9], (byte)(right[^9] ^ 1), .. right[^8..]],
            "other certificate" => s_director.Answer(toSign),
            _ => Token.Of("Lab Scientist One", rsa: false).Answer(toSign),
        };

        Assert.Contains(expected, Why(CompleteWith(answer)), Comparison);
    }

    [Fact]
    public void What_has_changed_since_it_was_prepared_is_told()
    {
        var report = EvidenceExample.Unsigned;
        var prepared = s_prepared.Value;
        var other = prepared.Document.Bytes.ToArray();
        var name = other.AsSpan().LastIndexOf("(Lab Scientist One)"u8);
        other[name + 1] = (byte)'M';

        Assert.Contains(
            "changed or signed since",
            Why(Complete(EvidenceExample.SignedOnce, prepared, s_author)),
            Comparison
        );
        Assert.Contains(
            "one of them was changed",
            Why(
                ReportCompletion.Complete(
                    Order(report, prepared, s_author) with
                    {
                        Prepared = other,
                    }
                )
            ),
            Comparison
        );
        Assert.Contains(
            "one of them was changed",
            Why(
                ReportCompletion.Complete(
                    Order(report, prepared, s_author) with
                    {
                        Certificate = s_director.Facts,
                    }
                )
            ),
            Comparison
        );
        Assert.Contains(
            "has one already",
            Why(
                ReportCompletion.Complete(
                    Order(report, prepared, s_author) with
                    {
                        Prepared = EvidenceExample.SignedOnce,
                    }
                )
            ),
            Comparison
        );
    }

    [Theory]
    [InlineData(-1, "Set the clock right")]
    [InlineData(60 * 25, "more than a day ago")]
    public void The_time_on_the_stamp_is_about_that_of_signing(int minutes, string expected) =>
        Assert.Contains(
            expected,
            Why(
                ReportCompletion.Complete(
                    Order(EvidenceExample.Unsigned, s_prepared.Value, s_author) with
                    {
                        At = EvidenceExample.Now.AddMinutes(minutes),
                    }
                )
            ),
            Comparison
        );

    [Fact]
    public void A_certificate_that_has_expired_meanwhile_does_not_sign()
    {
        var token = Token.Of(
            "Lab Scientist One",
            rsa: false,
            until: EvidenceExample.Now.AddHours(2)
        );
        var prepared = Prepare(EvidenceExample.Unsigned, "author", token);

        Assert.Contains(
            "no longer valid",
            Why(
                ReportCompletion.Complete(
                    Order(EvidenceExample.Unsigned, prepared, token) with
                    {
                        At = EvidenceExample.Now.AddHours(3),
                    }
                )
            ),
            Comparison
        );
    }

    [Fact]
    public void A_decision_that_was_recorded_meanwhile_is_told()
    {
        var prepared = Prepare(
            EvidenceExample.SignedOnce,
            "approver",
            s_director,
            DecisionRequest.Approval
        );

        Assert.Contains(
            "Another decision",
            Why(
                ReportCompletion.Complete(
                    Order(EvidenceExample.SignedOnce, prepared, s_director) with
                    {
                        Earlier = new RecordedDecision(
                            EvidenceExample.Now,
                            "Medical Director One (approver)",
                            "declined"
                        ),
                    }
                )
            ),
            Comparison
        );
    }

    private static SigningAttempt PrepareAny(
        ReadOnlyMemory<byte> report,
        string role,
        Token token,
        DecisionRequest? decision = null,
        DateTimeOffset? at = null
    ) =>
        ReportSigning.Prepare(
            report,
            token.Facts,
            new SigningOrder(role, at ?? EvidenceExample.Now, null, null, decision)
        );

    private static SigningAttempt.Prepared Prepare(
        ReadOnlyMemory<byte> report,
        string role,
        Token token,
        DecisionRequest? decision = null
    ) => Assert.IsType<SigningAttempt.Prepared>(PrepareAny(report, role, token, decision));

    private static CompletionOrder Order(
        ReadOnlyMemory<byte> report,
        SigningAttempt.Prepared prepared,
        Token token
    ) =>
        new(
            report,
            prepared.Document.Bytes,
            token.Facts,
            token.Answer(prepared.Document.ToSign),
            EvidenceExample.Now.AddMinutes(20),
            null
        );

    private static SigningAttempt Complete(
        ReadOnlyMemory<byte> report,
        SigningAttempt.Prepared prepared,
        Token token
    ) => ReportCompletion.Complete(Order(report, prepared, token));

    private static SigningAttempt CompleteWith(byte[] answer) =>
        ReportCompletion.Complete(
            Order(EvidenceExample.Unsigned, s_prepared.Value, s_author) with
            {
                Answer = answer,
            }
        );

    private static SigningAttempt.Done Done(SigningAttempt attempt) =>
        attempt is SigningAttempt.Refused refused
            ? throw new InvalidOperationException(refused.Why)
            : Assert.IsType<SigningAttempt.Done>(attempt);

    private static string Why(SigningAttempt attempt) =>
        Assert.IsType<SigningAttempt.Refused>(attempt).Why;

    /// <summary>The outermost value with its length left open, as programs write that do not know it beforehand.</summary>
    private static byte[] InBer(byte[] der)
    {
        AsnDecoder.ReadEncodedValue(
            der,
            AsnEncodingRules.DER,
            out var start,
            out var length,
            out _
        );
        return [0x30, 0x80, .. der.AsSpan(start, length), 0, 0];
    }

    /// <summary>A key that gives signatures and nothing else, as one on a card does.</summary>
    private sealed record Token(X509Certificate2 Holder)
    {
        public string Pem => Holder.ExportCertificatePem();

        public CertificateFacts Facts =>
            (
                PublicCertificate.Read(Encoding.ASCII.GetBytes(Pem), out _)
                ?? throw new InvalidOperationException()
            ).Facts;

        public static Token Of(string name, bool rsa, DateTimeOffset? until = null)
        {
            using var key = rsa ? RSA.Create(2048) : null;
            using var curve = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            var request = key is null
                ? new CertificateRequest($"CN={name}", curve, HashAlgorithmName.SHA256)
                : new CertificateRequest(
                    $"CN={name}",
                    key,
                    HashAlgorithmName.SHA256,
                    RSASignaturePadding.Pkcs1
                );
            request.CertificateExtensions.Add(
                new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false)
            );
            return new(
                request.CreateSelfSigned(
                    EvidenceExample.Now.AddDays(-60),
                    until ?? EvidenceExample.Now.AddDays(300)
                )
            );
        }

        public byte[] Answer(
            ReadOnlyMemory<byte> toSign,
            bool isDetached = true,
            bool attributes = true,
            bool isNamed = true,
            string digest = "2.16.840.1.101.3.4.2.1",
            SubjectIdentifierType by = SubjectIdentifierType.IssuerAndSerialNumber,
            X509IncludeOption include = X509IncludeOption.EndCertOnly,
            Token? also = null
        )
        {
            var container = new SignedCms(new ContentInfo(toSign.ToArray()), isDetached);
            var signer = new CmsSigner(by, Holder)
            {
                DigestAlgorithm = new Oid(digest),
                IncludeOption = include,
            };
            if (attributes)
            {
                signer.SignedAttributes.Add(new Pkcs9SigningTime());
            }

            if (attributes && isNamed)
            {
                signer.SignedAttributes.Add(
                    new AsnEncodedData(new Oid("1.2.840.113549.1.9.16.2.47"), Named())
                );
            }

            container.ComputeSignature(signer);
            if (also is not null)
            {
                container.ComputeSignature(new CmsSigner(also.Holder));
            }

            return container.Encode();
        }

        /// <summary>The signing certificate as ESS names it (RFC 5035).</summary>
        private byte[] Named()
        {
            var writer = new AsnWriter(AsnEncodingRules.DER);
            using (writer.PushSequence())
            using (writer.PushSequence())
            using (writer.PushSequence())
            {
                writer.WriteOctetString(Holder.GetCertHash(HashAlgorithmName.SHA256));
            }

            return writer.Encode();
        }
    }
}
