using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The decision-level criteria with another line in place of weighted Deming regression.</summary>
internal static class DecisionLevelSensitivity
{
    /// <summary>One line; none without a decision-level criterion.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence cell
    )
    {
        var rules = cell.Context.Rules<DecisionLevelCriterion>();
        yield return RobustnessLine.Of(
            new RobustnessQuestion(RobustnessKind.OtherRegression),
            criteria,
            [
                .. criteria.Select(result =>
                    result is DecisionLevelResult levels
                        ? DecisionLevelEvaluation.Evaluate(
                            rules[levels.Criterion],
                            levels.Limit,
                            cell,
                            ConstantErrors
                        )
                        : result
                ),
            ]
        );
    }

    private static ImmutableArray<Estimate<BiasAtLevel>> ConstantErrors(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        ImmutableArray<double> levels,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    )
    {
        var changes = ImmutableArray.CreateBuilder<Estimate<BiasAtLevel>>(levels.Length);
        foreach (var level in levels)
        {
            changes.Add(
                DemingRegression.BiasAt(
                    x,
                    y,
                    errorVarianceRatio,
                    level,
                    confidenceLevel,
                    clusterings
                )
            );
        }

        return changes.MoveToImmutable();
    }
}
