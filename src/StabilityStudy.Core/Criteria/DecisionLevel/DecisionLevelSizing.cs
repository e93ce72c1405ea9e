using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>How many specimens the change predicted at each level needs. Its error falls with the square root of their number, as long as the baselines spread alike.</summary>
internal static class DecisionLevelSizing
{
    public static ImmutableArray<SizedFigure> Of(
        DecisionLevelResult levels,
        int compared,
        int days
    ) =>
        [
            .. from level in levels.Levels
            where level.Change.Value is not null
            let change = level.Change.Value
            select SizedFigure.OfInterval(
                new JudgedFigure(CriterionKind.DecisionLevel, levels.Criterion, level.Level),
                change.Bias,
                ScatterOf(change, compared, days),
                (-level.Allowed, level.Allowed),
                levels.ConfidenceLevel,
                SizedFigure.IsInterval(level.Reason)
            ),
            .. from level in levels.Levels
            where level.Beside.Value is not null
            let beside = level.Beside.Value
            let allowed = 100 * level.Allowed / (double)level.Level
            select SizedFigure.OfInterval(
                new JudgedFigure(CriterionKind.DecisionLevel, levels.Criterion, level.Level),
                beside.Percent,
                new Scatter(
                    (beside.UpperPercent - beside.LowerPercent)
                        / 2
                        / Normal.Quantile((1 + levels.ConfidenceLevel) / 2)
                        * Math.Sqrt(compared),
                    0,
                    1
                ),
                (-allowed, allowed),
                levels.ConfidenceLevel,
                level.Reason is OneSideOfLevelReason
            ),
        ];

    private static Scatter ScatterOf(BiasAtLevel change, int compared, int days) =>
        change.DecidedBy != IntervalSource.Specimens && days > 1
            ? new(0, change.StandardError * Math.Sqrt(days), (double)compared / days)
            : new(change.StandardError * Math.Sqrt(compared), 0, 1);
}
