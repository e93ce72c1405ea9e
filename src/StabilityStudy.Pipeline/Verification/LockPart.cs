using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Queries;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Whether the criteria came before the data, and whether those who vouch for that are trusted.</summary>
internal static class LockPart
{
    private const string Question = "Did the criteria come before the data?";

    /// <param name="evidence">What the locks say; null when the study could not be analyzed.</param>
    /// <param name="queries">The queries that the report states.</param>
    /// <param name="inputs">The files in the report.</param>
    /// <param name="record">Content of the study's record; null where it was not given.</param>
    /// <param name="signatures">The signatures of the report.</param>
    /// <param name="options">Whom to trust.</param>
    public static VerifiedPart Of(
        LockEvidence? evidence,
        ImmutableArray<DataQuery> queries,
        StudyBytes? inputs,
        ReadOnlyMemory<byte>? record,
        ImmutableArray<SignatureVerification> signatures,
        VerificationOptions options
    ) =>
        evidence is null
            ? new VerifiedPart(
                Question,
                PartOutcome.NotChecked,
                ["Not checked, because the data in the file give no analysis."]
            )
            : VerifiedPart.Of(
                Question,
                [
                    (
                        evidence.Standing switch
                        {
                            LockStanding.BeforeFirstCollection => PartOutcome.Holds,
                            LockStanding.NotLocked
                            or LockStanding.ProtocolChanged
                            or LockStanding.Contradicted
                            or LockStanding.OutOfOrder
                            or LockStanding.AfterFirstCollection => PartOutcome.Fails,
                        },
                        ReportBuilder.LockSentence(evidence)
                    ),
                    .. OfRecord(queries),
                    .. inputs is null ? [] : OfCopies(evidence.Locks, inputs),
                    .. Vouched(evidence, inputs, options),
                    .. inputs is null ? [] : OfDocuments(evidence, inputs, options),
                    .. RecordComparison.Of(record, signatures, evidence, inputs, queries),
                ]
            );

    /// <summary>What the report itself states against the lock: the record of the study is not a part of it.</summary>
    private static IEnumerable<(PartOutcome, string)> OfRecord(ImmutableArray<DataQuery> queries)
    {
        foreach (var query in queries)
        {
            if (
                query.Kind == LockFileQueries.LockNotAsRecorded
                || query.Kind == LockFileQueries.RecordChainBroken
            )
            {
                yield return (
                    PartOutcome.Fails,
                    $"The report states about {query.Source.File}: {query.Message}"
                );
            }
            else if (query.Kind == LockFileQueries.LockNotRecorded)
            {
                yield return (
                    PartOutcome.NotChecked,
                    $"The report states about {query.Source.File}: {query.Message}"
                );
            }
        }
    }

    /// <summary>The protocols as they were locked must be in the report, byte for byte: what an amendment changed is seen from them.</summary>
    private static IEnumerable<(PartOutcome, string)> OfCopies(
        ImmutableArray<ProtocolLock> locks,
        StudyBytes inputs
    ) =>
        [
            .. LockedProtocols
                .NotLocked(locks, inputs.Files)
                .Select(name =>
                    (
                        PartOutcome.Fails,
                        $"The attached {name} is not the protocol whose hash {LockFile.Name} holds."
                    )
                ),
            .. LockedProtocols
                .Missing(locks, inputs.Files)
                .Select(item =>
                    (
                        PartOutcome.NotChecked,
                        FormattableString.Invariant(
                            $"The protocol of lock {item.Number} is not in the report, so what was amended after it cannot be seen."
                        )
                    )
                ),
        ];

    /// <summary>What the signed protocol documents show, verified by the rules for reports.</summary>
    private static IEnumerable<(PartOutcome, string)> OfDocuments(
        LockEvidence evidence,
        StudyBytes inputs,
        VerificationOptions options
    )
    {
        foreach (var item in evidence.Locks)
        {
            if (
                !inputs.Files.TryGetValue(
                    LockedProtocols.StoredDocumentName(item.Number),
                    out var pdf
                )
            )
            {
                continue;
            }

            var (approval, stated, fault) = ProtocolApprovals.Read(pdf, item.ProtocolSha256);
            var about = FormattableString.Invariant($"The protocol document of lock {item.Number}");
            if (fault is not null || !ProtocolDocumentFile.TryRead(pdf, out var document, out _))
            {
                yield return (PartOutcome.Fails, $"{about}: {fault}");
                continue;
            }

            if (Amendments.FaultOf(stated, item.Number, inputs) is var (outcome, why))
            {
                yield return (outcome, $"{about}: {why}");
            }
            else if (stated is not null)
            {
                yield return (
                    PartOutcome.Holds,
                    FormattableString.Invariant(
                        $"{about} amends the protocol of lock {stated.EarlierLockNumber}, and its list of {Counted.Of(stated.Changes.Length, "change")} is what differs between the two."
                    )
                );
            }

            var found = SignatureVerifier.Verify(pdf, options);
            foreach (
                var part in new[]
                {
                    DrawnDocumentVerifier.Signatures(pdf, document, found, options),
                    DrawnDocumentVerifier.Pages(document, found),
                }
            )
            {
                foreach (var sentence in part.Sentences)
                {
                    yield return (part.Outcome, $"{about}: {sentence}");
                }
            }

            if (approval?.Latest >= evidence.FirstCollection)
            {
                yield return (
                    PartOutcome.NotChecked,
                    $"{about} was signed by {approval.By} ({approval.Role}) when specimens had already been collected: it approves nothing beforehand."
                );
            }
        }
    }

    /// <summary>Who vouches for the lock that fixed the rules, and for each amendment of planned numbers after it.</summary>
    private static ImmutableArray<(PartOutcome, string)> Vouched(
        LockEvidence evidence,
        StudyBytes? inputs,
        VerificationOptions options
    ) =>
        evidence.Standing is LockStanding.BeforeFirstCollection or LockStanding.Contradicted
        && inputs is not null
        && inputs.Files.TryGetValue(LockFile.Name, out var bytes)
        && LockFile.Read(bytes).TryGet(out var stored)
            ?
            [
                .. evidence
                    .Locks.Zip(stored.All)
                    .Skip(LockEvidence.RulesLockedLast(evidence.Locks).Number - 1)
                    .SelectMany(pair =>
                        Vouched(
                            pair.First,
                            pair.Second,
                            pair.First.Approval is not null && evidence.IsApprovedInTime,
                            options
                        )
                    ),
            ]
            : [];

    private static IEnumerable<(PartOutcome, string)> Vouched(
        ProtocolLock found,
        StoredLock stored,
        bool isApproved,
        VerificationOptions options
    )
    {
        SignatureProblem? fault = null;
        var stamp = stored.TimeStamp.IsEmpty
            ? null
            : StatementVerifier.TimeStamp(
                stored.Statement(),
                stored.TimeStamp.AsMemory(),
                options,
                out fault
            );
        var signature = stored.Signature.IsEmpty
            ? null
            : StatementVerifier.Signature(
                stored.Statement(),
                stored.Signature.AsMemory(),
                stored.Lock.At,
                options
            );
        var number = FormattableString.Invariant($"lock {found.Number}");
        ImmutableArray<SignatureProblem> problems =
        [
            .. signature?.Problems ?? [],
            .. fault is { } wrong ? [wrong] : ImmutableArray<SignatureProblem>.Empty,
        ];
        return
        [
            .. problems.Select(problem =>
                (PartOutcome.Fails, $"The proof of {number}: {ProblemWords.Of(problem)}.")
            ),
            .. found.Level switch
            {
                LockLevel.ByTimeStamp when stamp is not null => TrustWords.OfAuthority(
                    $"The certificate of the time-stamp authority {stamp.Authority.Name} of {number}",
                    stamp,
                    options
                ),
                LockLevel.BySignature when signature is { Signer: { } signer } =>
                    TrustWords.OfSigner(
                        $"The certificate of {signer.Name}, who signed {number},",
                        signer,
                        signature.Chain,
                        proven: null,
                        options
                    ),
                LockLevel.Contradicted => [],
                // The signatures on the protocol document date it, and are judged by themselves.
                LockLevel.ThisComputersClock when isApproved => [],
                LockLevel.ByApprover
                or LockLevel.ByApproverAndTimeStamp
                or LockLevel.ByTimeStamp
                or LockLevel.BySignature
                or LockLevel.NotLocked
                or LockLevel.ThisComputersClock =>
                [
                    (
                        PartOutcome.NotChecked,
                        $"Nothing but a computer's own clock shows the time of {number}, and a clock can be set: that proves little. Ask for what else dates the protocol, such as a signed print."
                    ),
                ],
            },
        ];
    }
}
