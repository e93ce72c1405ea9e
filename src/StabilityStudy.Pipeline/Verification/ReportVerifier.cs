using StabilityStudy.Core.Analysis;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Verifies a report and trusts nothing in it: signatures, revisions, the figures, and that the criteria came first.</summary>
public static class ReportVerifier
{
    /// <summary>Verifies a report.</summary>
    /// <param name="report">The bytes of the file.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="record">Content of record.jsonl of the study, to be held against what the signatures state of it; null where it is not at hand.</param>
    public static ReportVerification Verify(
        ReadOnlyMemory<byte> report,
        VerificationOptions options,
        ReadOnlyMemory<byte>? record = null
    ) => Verify(report, options, record, Recomputation.Of);

    /// <summary>The same with another way to compute again, which need not be done anew for every file with the same first revision.</summary>
    internal static ReportVerification Verify(
        ReadOnlyMemory<byte> report,
        VerificationOptions options,
        ReadOnlyMemory<byte>? record,
        Func<AttachedStudy, Recomputation> recompute
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = SignatureVerifier.Verify(report, options);
        // A file that cannot be read is not read again: it may have cost all that the bounds allow.
        FirstRevision? first = null;
        AttachedStudy? study = null;
        string? fault = "The file cannot be read as a PDF: " + found.Failure?.What;
        if (found.Failure is null && FirstRevision.TryRead(report, out first, out fault))
        {
            if (Signable.IsDrawn(first))
            {
                if (Signable.TryReadDrawn(first, out var document, out fault))
                {
                    return DrawnDocumentVerifier.Verify(report, document, found, options, record);
                }
            }
            else
            {
                _ = AttachedStudy.TryRead(first, out study, out fault);
            }
        }

        var isReport = study is not null;
        var recomputed = isReport ? recompute(study!) : null;
        var analysis = recomputed?.Recomputed;
        var signatures = SignaturePart.Of(
            report,
            found,
            analysis is null
                ? null
                : SignedSubject.Of(analysis) with
                {
                    HasOtherRows = !recomputed!.UnderOtherRules.IsEmpty,
                },
            study?.Stated.ToolVersion,
            options
        );
        var additions = RevisionPart.Of(found);
        return new ReportVerification(
            analysis?.Protocol.Code,
            analysis?.Identity.InputDigest,
            recomputed is { FiguresHold: true, UnderOtherRules.IsEmpty: true }
                ? ReportBuilder.ConclusionLines(analysis!)
                : [],
            [
                signatures,
                additions,
                recomputed is null
                    ? new VerifiedPart(RecomputationPart.Question, PartOutcome.Fails, [fault!])
                    : RecomputationPart.Of(recomputed, study!.Stated),
                LockPart.Of(
                    analysis?.Lock,
                    study?.Stated.OwnFileQueries ?? [],
                    study?.Inputs,
                    record,
                    found.Signatures,
                    options
                ),
            ]
        )
        {
            Analysis = analysis,
            IsOfLaterVersion = recomputed?.MadeBy == MadeBy.LaterVersion,
            LacksSignatures =
                (found.Signatures.IsEmpty || !found.EmptyFields.IsEmpty)
                && found.Signatures.All(signature =>
                    signature.Holds
                    && SignedStatement.Read(signature.Statement) is StatementReading.Read
                ),
            Decision = Decision(found, analysis),
            Indication = ValidationIndication.Of(found, signatures.Outcome, additions.Outcome),
        };
    }

    /// <summary>What was decided, so that nobody reads past a refusal: the strictest decision where there are several, the newest among equals.</summary>
    private static SignedDecision? Decision(DocumentVerification found, StudyAnalysis? analysis) =>
        found
            .Signatures.Where(signature => signature.Holds)
            .Select(signature =>
                SignedStatement.Read(signature.Statement)
                    is StatementReading.Read { Statement.Decision: { } decision }
                    ? new SignedDecision(
                        decision,
                        signature.SignerName ?? signature.FieldName,
                        signature.Reason ?? "",
                        signature.ClaimedTime,
                        [
                            .. analysis is null
                                ? []
                                : DecisionWords.Rows(analysis.Protocol, decision),
                            .. DecisionWords.Terms(decision),
                        ],
                        $"{DecisionWords.Headline(decision)} ({signature.SignerName}, {signature.Reason})"
                    )
                    : null
            )
            .OfType<SignedDecision>()
            .Reverse()
            .MinBy(signed => signed.Decision.Kind);
}
