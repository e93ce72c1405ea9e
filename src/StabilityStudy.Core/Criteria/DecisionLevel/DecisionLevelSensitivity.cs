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
                            DemingRegression.BiasAt
                        )
                        : result
                ),
            ]
        );
    }
}
