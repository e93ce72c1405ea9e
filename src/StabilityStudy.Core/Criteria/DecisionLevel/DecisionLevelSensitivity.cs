using System.Collections.Immutable;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The decision-level criteria with another line in place of weighted Deming regression.</summary>
internal static class DecisionLevelSensitivity
{
    /// <summary>The question with the criteria as they would be; none without a decision-level criterion.</summary>
    public static IEnumerable<(
        string Code,
        string Question,
        ImmutableArray<CriterionResult> Criteria
    )> Of(
        ImmutableArray<CriterionResult> criteria,
        CellData data,
        ImmutableArray<PairRecord> pairs,
        CellContext context
    )
    {
        var rules = context
            .Applying.Select(item => item.Criterion)
            .OfType<DecisionLevelCriterion>()
            .ToDictionary(criterion => criterion.Id);
        if (rules.Count == 0)
        {
            yield break;
        }

        yield return (
            "other-regression",
            "with Deming regression of constant error in place of weighted Deming regression",
            [
                .. criteria.Select(result =>
                    result is DecisionLevelResult levels
                        ? DecisionLevelEvaluation.Evaluate(
                            rules[levels.Criterion],
                            levels.Limit,
                            data,
                            context,
                            CellEvaluation.Uncounted(pairs, context),
                            DemingRegression.BiasAt
                        )
                        : result
                ),
            ]
        );
    }
}
