using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Who signed, when, and whether the signatures are right and their signers trusted.</summary>
internal static class SignaturePart
{
    private const string Question = "Who signed, and do the signatures hold?";

    /// <param name="report">The bytes of the file.</param>
    /// <param name="found">The signatures and revisions.</param>
    /// <param name="subject">What is signed; null where it could not be computed again.</param>
    /// <param name="madeBy">The version that made the document; null where that is not known.</param>
    /// <param name="options">Whom to trust.</param>
    public static VerifiedPart Of(
        ReadOnlyMemory<byte> report,
        DocumentVerification found,
        SignedSubject? subject,
        string? madeBy,
        VerificationOptions options
    )
    {
        if (found.Failure is { } failure)
        {
            return new VerifiedPart(
                Question,
                PartOutcome.Fails,
                ["The file cannot be read: " + failure.What]
            );
        }

        return VerifiedPart.Of(
            Question,
            [
                .. found.Signatures.SelectMany(item => OfOne(item, subject, madeBy, options)),
                .. found.Signatures.SelectMany(
                    (item, i) =>
                        item.Holds
                            ? About(item, AmongOthers(item, found.Signatures[..i], subject))
                            : []
                ),
                .. found.ArchiveTimeStamps.SelectMany(stamp => OfArchive(stamp, options)),
                .. Missing(found, subject),
                .. found
                    .Signatures.Where(item => item.Holds)
                    .SelectMany(item => About(item, OfStamp(report, item, subject))),
                .. TrustWords.NotAsked(
                    found
                        .Signatures.SelectMany(item => new[] { item.Chain, item.TimeStamp?.Chain })
                        .Concat(found.ArchiveTimeStamps.Select(item => item.TimeStamp?.Chain))
                        .OfType<ChainVerification>(),
                    options
                ),
                .. options.UnreadFiles.Select(what => (PartOutcome.NotChecked, what)),
            ]
        );
    }

    private static IEnumerable<(PartOutcome, string)> AmongOthers(
        SignatureVerification signature,
        ImmutableArray<SignatureVerification> before,
        SignedSubject? subject
    ) =>
        [
            .. subject is null
                ? []
                : SigningRules.OutOfTurn(signature, before, subject.Signatories),
            .. SigningRules.Beside(signature, before),
        ];

    private static IEnumerable<(PartOutcome, string)> OfOne(
        SignatureVerification signature,
        SignedSubject? subject,
        string? madeBy,
        VerificationOptions options
    )
    {
        var who = Who(signature);
        if (!signature.Holds)
        {
            foreach (var problem in signature.Problems)
            {
                yield return (PartOutcome.Fails, $"{who}: {ProblemWords.Of(problem)}.");
            }

            yield break;
        }

        yield return (PartOutcome.Holds, $"{who}: the signature is right. {When(signature)}");
        IEnumerable<(PartOutcome, string)> findings =
        [
            .. OfStatement(signature, subject, madeBy),
            .. subject is null ? [] : SigningRules.OfSigner(signature, subject),
        ];
        foreach (var finding in About(signature, findings))
        {
            yield return finding;
        }

        var certificate = signature.Signer!;
        var issued = certificate.IsSelfIssued
            ? "which is self-issued (nobody else vouches for the name)"
            : $"issued by {certificate.Issuer}";
        foreach (
            var finding in TrustWords.OfSigner(
                $"{who}: the certificate of {certificate.Name}, {issued},",
                certificate,
                signature.Chain,
                signature.ProvenTime,
                options
            )
        )
        {
            yield return finding;
        }

        if (signature.TimeStamp is { } stamp)
        {
            foreach (
                var finding in TrustWords.OfAuthority(
                    $"{who}: the certificate of the time-stamp authority {stamp.Authority.Name}",
                    stamp,
                    options
                )
            )
            {
                yield return finding;
            }
        }
    }

    /// <summary>What an archive time stamp is worth, which dates all that was in the file before it.</summary>
    private static IEnumerable<(PartOutcome, string)> OfArchive(
        ArchiveTimeStampVerification archive,
        VerificationOptions options
    ) =>
        archive is { Holds: true, TimeStamp: { } stamp }
            ?
            [
                (
                    PartOutcome.Holds,
                    $"An archive time stamp of {TrustWords.Time(stamp.Time)} by {stamp.Authority.Name} covers all that was in the file then."
                ),
                .. TrustWords.OfAuthority(
                    $"The certificate of the time-stamp authority {stamp.Authority.Name} of the archive time stamp of {TrustWords.Time(stamp.Time)}",
                    stamp,
                    options
                ),
            ]
            :
            [
                .. archive.Problems.Select(problem =>
                    (
                        PartOutcome.Fails,
                        $"An archive time stamp (field {archive.FieldName}): {ProblemWords.Of(problem)}."
                    )
                ),
            ];

    /// <summary>What the statement inside the signature says, and whether it may say that.</summary>
    private static IEnumerable<(PartOutcome, string)> OfStatement(
        SignatureVerification signature,
        SignedSubject? subject,
        string? madeBy
    )
    {
        if (signature.Statement is null)
        {
            return
            [
                (
                    PartOutcome.Fails,
                    "the signature states no role, and this program writes one into each"
                ),
            ];
        }

        return SignedStatement.Read(signature.Statement) switch
        {
            StatementReading.Read { Statement: var statement } =>
            [
                .. statement.Decision is { } decision
                    ? [(PartOutcome.Holds, DecisionWords.Headline(decision))]
                    : ImmutableArray<(PartOutcome, string)>.Empty,
                .. subject is null ? [] : SigningRules.OfStatement(signature, statement, subject),
                .. SigningRules.OfVersions(statement, madeBy),
            ],
            StatementReading.OfLaterVersion =>
            [
                (
                    PartOutcome.NotChecked,
                    "a later version of the program wrote what the signature states, which this one cannot read"
                ),
            ],
            StatementReading.Malformed =>
            [
                (
                    PartOutcome.Fails,
                    "what the signature states is not written as this program writes it"
                ),
            ],
            _ => throw new InvalidOperationException("A statement is read in one of three ways."),
        };
    }

    private static IEnumerable<(PartOutcome, string)> About(
        SignatureVerification signature,
        IEnumerable<(PartOutcome Outcome, string What)> findings
    ) => findings.Select(item => (item.Outcome, $"{Who(signature)}: {item.What}."));

    private static IEnumerable<(PartOutcome, string)> Missing(
        DocumentVerification found,
        SignedSubject? subject
    )
    {
        if (found.Signatures.IsEmpty)
        {
            yield return (PartOutcome.NotChecked, "Nobody has signed.");
            yield break;
        }

        foreach (var field in found.EmptyFields)
        {
            yield return (PartOutcome.NotChecked, $"Not signed: {RoleOf(field, subject)}.");
        }
    }

    /// <summary>The stamp is drawn again from what the signature states, and the whole revision compared: a picture could say anything.</summary>
    private static IEnumerable<(PartOutcome, string)> OfStamp(
        ReadOnlyMemory<byte> report,
        SignatureVerification signature,
        SignedSubject? subject
    )
    {
        var signatory = subject is null
            ? null
            : SignatoryFields.SignatoryOf(subject.Signatories, signature.FieldName);
        if (
            signatory is null
            || signature
                is not {
                    Revision: { } revision,
                    SignerName: { } name,
                    ClaimedTime: { } time,
                    Signer: { } certificate,
                    Place: { } field
                }
            || SignedStatement.Read(signature.Statement)
                is not StatementReading.Read { Statement: var statement }
        )
        {
            yield return (
                PartOutcome.NotChecked,
                "the stamp on the page is a picture and could not be compared with what was signed"
            );
            yield break;
        }

        var isSame = PdfSigner.IsAppended(
            report,
            revision,
            new(
                signature.FieldName,
                time,
                name,
                SignatoryFields.MeaningOf(signatory),
                null,
                signature.Statement,
                StampLines.Stamp(
                    subject!.Analysis?.Protocol,
                    signatory,
                    name,
                    time,
                    statement,
                    certificate,
                    field,
                    PdfSigner.AreasOf(report, signature.FieldName)
                )
            )
        );
        yield return isSame ? (PartOutcome.Holds, "the stamp on the page says what was signed")
        : statement.ToolVersion == ToolVersion.Current
            ? (
                PartOutcome.Fails,
                "the stamp on the page, or the field it fills, is not what was signed"
            )
        : (
            PartOutcome.NotChecked,
            $"the stamp on the page is by version {statement.ToolVersion} and was not drawn again"
        );
    }

    private static string RoleOf(string field, SignedSubject? subject) =>
        subject is null
            ? field
            : SignatoryFields.SignatoryOf(subject.Signatories, field)?.Role ?? field;

    /// <summary>Who signed, and with which meaning.</summary>
    internal static string Who(SignatureVerification signature) =>
        $"{signature.SignerName ?? signature.FieldName} ({signature.Reason ?? "no meaning stated"})";

    private static string When(SignatureVerification signature)
    {
        var claimed = $"Signed {TrustWords.Time(signature.ClaimedTime)}";
        return signature.TimeStamp switch
        {
            null when signature.ProvenTime is { } proven =>
                $"{claimed}: that time is the signer's claim; an archive time stamp shows that it was before {TrustWords.Time(proven)}.",
            null => $"{claimed}: that time is the signer's claim, which no time stamp shows.",
            { ProvenTime: { } proven } stamp =>
                $"{claimed} by the signer's clock; time-stamped {TrustWords.Time(proven)} by {stamp.Authority.Name}.",
            var stamp =>
                $"{claimed}: that time is the signer's claim; the time stamp of {TrustWords.Time(stamp.Time)} by {stamp.Authority.Name} shows nothing as long as the authority is not trusted.",
        };
    }
}
