using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Verifies a report and trusts nothing in it: signatures, revisions, the figures, and that the criteria came first.</summary>
public static class ReportVerifier
{
    /// <summary>Verifies a report.</summary>
    /// <param name="report">The bytes of the file.</param>
    /// <param name="options">Whom to trust.</param>
    public static ReportVerification Verify(
        ReadOnlyMemory<byte> report,
        VerificationOptions options
    )
    {
        var found = SignatureVerifier.Verify(report, options);
        var isReport = AttachedStudy.TryRead(report, out var study, out var fault);
        var recomputed = isReport ? Recomputation.Of(study!) : null;
        return new ReportVerification(
            study?.Analysis.Protocol.Code,
            study?.Analysis.Identity.InputDigest,
            recomputed is { FiguresHold: true, Recomputed: { } analysis }
                ? ReportBuilder.ConclusionLines(analysis)
                : [],
            [
                SignaturePart.Of(found, study?.Analysis),
                Revisions(found),
                recomputed is null
                    ? new VerifiedPart(RecomputedQuestion, PartOutcome.Fails, [fault!])
                    : Recomputed(recomputed, study!.Analysis),
                LockPart.Of(
                    recomputed?.Recomputed?.Lock,
                    study?.Analysis.Queries ?? [],
                    study?.Inputs,
                    options
                ),
            ]
        );
    }

    private const string RecomputedQuestion =
        "Do figures, conclusions and pages follow from the data in the file?";

    private static VerifiedPart Revisions(DocumentVerification found)
    {
        const string question = "Was anything done to the file besides signing?";
        if (found.Failure is not null)
        {
            return new VerifiedPart(question, PartOutcome.Fails, ["The file cannot be read."]);
        }

        var isUnsigned = found.Signatures.IsEmpty && found.Revisions.Length <= 1;
        var problems = found
            .Problems.Where(problem =>
                !isUnsigned || problem is not DocumentProblem.LastRevisionNotSigned
            )
            .Select(problem => (PartOutcome.Fails, ProblemWords.Of(problem)));
        var differences = found.Revisions.SelectMany(revision =>
            revision.Differences.Select(difference =>
                (PartOutcome.Fails, ProblemWords.Of(revision.Number, difference))
            )
        );
        ImmutableArray<(PartOutcome, string)> findings = [.. problems, .. differences];
        return findings.IsEmpty
            ? new VerifiedPart(
                question,
                isUnsigned ? PartOutcome.NotChecked : PartOutcome.Holds,
                [
                    isUnsigned
                        ? "Without a signature nothing shows whether the file was changed."
                        : FormattableString.Invariant(
                            $"No: nothing was added but {found.Signatures.Length} signatures, each in its own field. (Whether signed bytes were changed, the signatures show: see the first part.)"
                        ),
                ]
            )
            : VerifiedPart.Of(question, findings);
    }

    private static VerifiedPart Recomputed(Recomputation recomputed, StudyAnalysis claimed)
    {
        if (!recomputed.FiguresHold)
        {
            return new VerifiedPart(RecomputedQuestion, PartOutcome.Fails, recomputed.Faults);
        }

        const string figures =
            "Every figure and conclusion was computed again from the data in the file and is the same. What the report says about the laboratory's own files and record, which are not in it, cannot be checked here.";
        return recomputed.Pages switch
        {
            PagesOutcome.Same => new VerifiedPart(
                RecomputedQuestion,
                PartOutcome.Holds,
                [figures, "The pages were drawn again and are the same, byte for byte."]
            ),
            PagesOutcome.Differ => new VerifiedPart(
                RecomputedQuestion,
                PartOutcome.Fails,
                ["The pages are not those that this program draws from the data.", figures]
            ),
            _ => new VerifiedPart(
                RecomputedQuestion,
                PartOutcome.NotChecked,
                [
                    $"Pages not recomputed: the report was made by version {claimed.ToolVersion}, and this is version {ToolVersion.Current}.",
                    figures,
                ]
            ),
        };
    }
}
