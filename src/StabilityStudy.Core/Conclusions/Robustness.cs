using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Conclusions;

/// <summary>What a cell would conclude if one thing were otherwise.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Question">What is changed, in words.</param>
/// <param name="Conclusion">The conclusion that the cell would give on its own.</param>
/// <param name="Changes">Whether that differs from the cell's own conclusion.</param>
public sealed record RobustnessLine(
    string Code,
    string Question,
    Conclusion Conclusion,
    bool Changes
);

/// <summary>Asks what could overturn a cell's conclusion. Nothing here decides.</summary>
internal static class Robustness
{
    /// <summary>Code of the line on pairs that were left out.</summary>
    public const string LeftOutCountedOutside = "left-out-counted-outside";

    public static ImmutableArray<RobustnessLine> Of(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var own = CellEvaluation.Conclude(CellEvaluation.Evaluate(pairs, protocol, analyte, group));
        if (own == Conclusion.NotAssessed)
        {
            return [];
        }

        var lines = ImmutableArray.CreateBuilder<RobustnessLine>();
        void Ask(
            string code,
            string question,
            ImmutableArray<PairRecord> otherPairs,
            StudyProtocol otherProtocol
        )
        {
            var conclusion = CellEvaluation.Conclude(
                CellEvaluation.Evaluate(otherPairs, otherProtocol, analyte, group)
            );
            lines.Add(new(code, question, conclusion, conclusion != own));
        }

        lines.AddRange(OneSubject.Of(pairs, protocol, analyte, group));
        lines.AddRange(MoreOutside.Of(pairs, protocol, analyte, group));
        var flagged = pairs.Count(pair => pair.IsOutlier);
        if (flagged > 0)
        {
            Ask(
                "without-flagged-outliers",
                $"without the {Number(flagged, "flagged outlier", "flagged outliers")}",
                [.. pairs.Where(pair => !pair.IsOutlier)],
                protocol
            );
        }

        var leftOut = pairs.Count(CouldHaveFailed);
        if (leftOut > 0)
        {
            Ask(
                LeftOutCountedOutside,
                $"if {Number(leftOut, "pair", "pairs")} left out at this time point had been outside the allowable difference",
                [
                    .. pairs.Select(pair =>
                        CouldHaveFailed(pair) ? pair with { Status = PairStatus.Failed } : pair
                    ),
                ],
                protocol
            );
        }

        if (pairs.Any(pair => pair.Status == PairStatus.BeyondInterval))
        {
            Ask(
                "beyond-interval-at-the-limit",
                "with each result beyond a limit of measurement taken as that limit",
                [.. pairs.Select(AtTheLimit)],
                protocol
            );
        }

        if (OnOtherScale(protocol) is { } other)
        {
            Ask(
                "other-scale",
                "with the mean on the percent scale in place of the log-ratio, or the reverse",
                pairs,
                other
            );
        }

        return lines.ToImmutable();
    }

    private static bool CouldHaveFailed(PairRecord pair) =>
        pair.Status
            is PairStatus.Excluded
                or PairStatus.NoDelayedResult
                or PairStatus.OutsideTiming;

    private static PairRecord AtTheLimit(PairRecord pair) =>
        pair is { Status: PairStatus.BeyondInterval, Baseline: { } baseline, Delayed: { } delayed }
            ? pair with
            {
                Status = PairStatus.Compared,
                Baseline = baseline with { Result = AtTheLimit(baseline.Result) },
                Delayed = delayed with { Result = AtTheLimit(delayed.Result) },
            }
            : pair;

    private static ReportedResult AtTheLimit(ReportedResult result) =>
        result is CensoredResult censored
            ? new MeasuredResult(censored.Text, censored.Limit)
            : result;

    private static StudyProtocol? OnOtherScale(StudyProtocol protocol)
    {
        var criteria = protocol
            .Criteria.Select(criterion =>
                criterion switch
                {
                    BiasCriterion { Scale: ChangeScale.Percent } bias => bias with
                    {
                        Scale = ChangeScale.LogRatio,
                    },
                    BiasCriterion { Scale: ChangeScale.LogRatio } bias => bias with
                    {
                        Scale = ChangeScale.Percent,
                    },
                    _ => criterion,
                }
            )
            .ToImmutableArray();
        return criteria.SequenceEqual(protocol.Criteria)
            ? null
            : protocol with
            {
                Criteria = criteria,
            };
    }

    private static string Number(int count, string one, string many) =>
        count == 1 ? "one " + one : count.ToString(CultureInfo.InvariantCulture) + " " + many;
}
