using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The change at a level as the specimens on one side of it have it, with a slope in common and a step at the level.</summary>
/// <param name="IsAbove">Whether it is the side at or above the level.</param>
/// <param name="Percent">The change.</param>
/// <param name="LowerPercent">Lower end of its interval.</param>
/// <param name="UpperPercent">Upper end of its interval.</param>
public sealed record ChangeBesideLevel(
    bool IsAbove,
    double Percent,
    double LowerPercent,
    double UpperPercent
)
{
    /// <summary>The side that is less certain to be inside an allowance upward and downward: the one whose interval reaches further from zero.</summary>
    internal static Estimate<ChangeBesideLevel> WorseSide(
        double level,
        CellData data,
        double confidenceLevel
    )
    {
        var relative = RelativeChange.LogRatio(data.Pairs);
        var mean = relative.Then(changes =>
            ClusteredMean.WithInterval(changes.AsSpan(), data.Errors.Clusterings, confidenceLevel)
        );
        var fit = LevelStep.Fit(
            data.Pairs.X.AsSpan(),
            data.Pairs.Y.AsSpan(),
            data.Errors.DelayedRuns.Cluster,
            level
        );
        if (!mean.TryGet(out var changes))
        {
            return mean.RefusedAs<ChangeBesideLevel>();
        }

        if (!fit.TryGet(out var step))
        {
            return fit.RefusedAs<ChangeBesideLevel>();
        }

        var quantile = StudentT.Quantile((1 + confidenceLevel) / 2, step.DegreesOfFreedom);
        return Estimate.Of(
            new[] { (IsAbove: false, Side: step.Below), (IsAbove: true, Side: step.Above) }
                .Select(item =>
                {
                    var (percent, lower, upper) = LogRatio.BesideMean(
                        changes,
                        item.Side.BeyondMean,
                        quantile * item.Side.StandardError
                    );
                    return new ChangeBesideLevel(item.IsAbove, percent, lower, upper);
                })
                .MaxBy(side => side.Furthest)!
        );
    }

    /// <summary>How far from zero the interval reaches, percent.</summary>
    internal double Furthest => Math.Max(UpperPercent, -LowerPercent);
}
