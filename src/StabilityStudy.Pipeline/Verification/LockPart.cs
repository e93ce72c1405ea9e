using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Queries;
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
    /// <param name="options">Whom to trust.</param>
    public static VerifiedPart Of(
        LockEvidence? evidence,
        ImmutableArray<DataQuery> queries,
        StudyBytes? inputs,
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
                            or LockStanding.AfterFirstCollection => PartOutcome.Fails,
                        },
                        ReportBuilder.LockSentence(evidence)
                    ),
                    .. OfRecord(queries),
                    .. Vouched(evidence, inputs, options),
                ]
            );

    /// <summary>What the report itself states against the lock: the record stays in the laboratory and cannot be read here.</summary>
    private static IEnumerable<(PartOutcome, string)> OfRecord(ImmutableArray<DataQuery> queries) =>
        queries
            .Where(query =>
                query.Kind == LockFileQueries.LockNotAsRecorded
                || query.Kind == LockFileQueries.RecordChainBroken
            )
            .Select(query =>
                (PartOutcome.Fails, $"The report states about {query.Source.File}: {query.Message}")
            );

    private static ImmutableArray<(PartOutcome, string)> Vouched(
        LockEvidence evidence,
        StudyBytes? inputs,
        VerificationOptions options
    )
    {
        if (
            evidence.Standing
                is not (LockStanding.BeforeFirstCollection or LockStanding.Contradicted)
            || inputs is null
            || !inputs.Files.TryGetValue(LockFile.Name, out var bytes)
            || !LockFile.Read(bytes).TryGet(out var locks)
        )
        {
            return [];
        }

        var last = locks.All[LockEvidence.RulesLockedLast(evidence.Locks).Number - 1];
        SignatureProblem? fault = null;
        var stamp = last.TimeStamp.IsEmpty
            ? null
            : StatementVerifier.TimeStamp(
                last.Statement(),
                last.TimeStamp.AsMemory(),
                options,
                out fault
            );
        var signature = last.Signature.IsEmpty
            ? null
            : StatementVerifier.Signature(
                last.Statement(),
                last.Signature.AsMemory(),
                last.Lock.At,
                options
            );
        ImmutableArray<SignatureProblem> problems =
        [
            .. signature?.Problems ?? [],
            .. fault is { } found ? [found] : ImmutableArray<SignatureProblem>.Empty,
        ];
        return
        [
            .. problems.Select(problem =>
                (PartOutcome.Fails, $"The proof of the lock: {ProblemWords.Of(problem)}.")
            ),
            .. Trusted(evidence.Level, signature, stamp, options),
        ];
    }

    private static IEnumerable<(PartOutcome, string)> Trusted(
        LockLevel level,
        StatementSignature? signature,
        TimeStampVerification? stamp,
        VerificationOptions options
    ) =>
        level switch
        {
            LockLevel.ThisComputersClock =>
            [
                (
                    PartOutcome.Holds,
                    "Nothing but a computer's own clock shows the time of the lock, and a clock can be set: that proves little. Ask for what else dates the protocol, such as a signed print."
                ),
            ],
            LockLevel.ByTimeStamp when stamp is not null => TrustWords.OfAuthority(
                $"The certificate of the time-stamp authority {stamp.Authority.Name} of the lock",
                stamp,
                options
            ),
            LockLevel.BySignature when signature is { Signer: { } signer } => TrustWords.OfSigner(
                $"The certificate of {signer.Name}, who signed the lock,",
                signer,
                signature.Chain,
                proven: null,
                options
            ),
            _ => [],
        };
}
