using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

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
    public static ImmutableArray<RobustnessLine> Of(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        Conclusion With(ImmutableArray<PairRecord> changed) =>
            CellEvaluation.Conclude(CellEvaluation.Evaluate(changed, protocol, analyte, group));

        var own = With(pairs);
        var lines = ImmutableArray.CreateBuilder<RobustnessLine>();
        void Ask(string code, string question, ImmutableArray<PairRecord> changed)
        {
            var conclusion = With(changed);
            lines.Add(new(code, question, conclusion, conclusion != own));
        }

        var flagged = pairs.Count(pair => pair.IsOutlier);
        if (flagged > 0)
        {
            Ask(
                "without-flagged-outliers",
                $"without the {Number(flagged, "flagged outlier", "flagged outliers")}",
                [.. pairs.Where(pair => !pair.IsOutlier)]
            );
        }

        var leftOut = pairs.Count(CouldHaveFailed);
        if (leftOut > 0)
        {
            Ask(
                "left-out-counted-outside",
                $"if {Number(leftOut, "pair", "pairs")} left out after a valid baseline had been outside the allowable difference",
                [
                    .. pairs.Select(pair =>
                        CouldHaveFailed(pair) ? pair with { Status = PairStatus.Failed } : pair
                    ),
                ]
            );
        }

        if (
            pairs.LastOrDefault(pair => pair.Status == PairStatus.Compared && !pair.IsOutlier) is
            { } one
        )
        {
            Ask(
                "one-more-outside",
                "if one more specimen had failed",
                [
                    .. pairs.Select(pair =>
                        pair == one ? pair with { Status = PairStatus.Failed } : pair
                    ),
                ]
            );
        }

        return lines.ToImmutable();
    }

    private static bool CouldHaveFailed(PairRecord pair) =>
        pair.Status
            is PairStatus.Excluded
                or PairStatus.NoDelayedResult
                or PairStatus.OutsideTiming;

    private static string Number(int count, string one, string many) =>
        count == 1 ? "one " + one : count.ToString(CultureInfo.InvariantCulture) + " " + many;
}
