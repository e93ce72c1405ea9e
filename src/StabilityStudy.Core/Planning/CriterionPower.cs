using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>The chance that one criterion is met, by its formula, as if no other were asked. There is one where the change and its limit are both in percent, so that baselines play no part.</summary>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Power">The chance, 0 to 1, with specimens that have nothing in common with others of their day.</param>
public sealed record CriterionPower(string Criterion, double Power)
{
    /// <summary>The criteria with a formula: a mean or a share that an interval or bound holds to a limit in percent.</summary>
    internal static ImmutableArray<CriterionPower> Of(
        CellContext context,
        SupposedResults supposed,
        double meanPercent
    )
    {
        var spread = supposed.TotalSdPercent;
        return
        [
            .. context
                .Applying.Where(item => item.Limit is { Percent: not null, AbsoluteInUnit: null })
                .Select(item =>
                    (
                        item.Criterion.Id,
                        Power: PowerOf(
                            item.Criterion,
                            (double)item.Limit!.Percent!.Value,
                            supposed.Specimens,
                            meanPercent,
                            spread
                        )
                    )
                )
                .Where(item => item.Power is not null)
                .Select(item => new CriterionPower(item.Id, item.Power!.Value)),
        ];
    }

    private static double? PowerOf(
        Criterion criterion,
        double allowable,
        int specimens,
        double meanPercent,
        double spread
    ) =>
        criterion switch
        {
            BiasCriterion { Rule: DecisionRule.Confidence, Scale: ChangeScale.Percent }
                when specimens > 1 && spread > 0 => EquivalencePower.Of(
                specimens,
                meanPercent,
                spread,
                -allowable,
                allowable,
                criterion.ConfidenceLevel
            ),
            IndividualCriterion { Rule: DecisionRule.Confidence } item when spread > 0 =>
                IndividualPower.Of(
                    specimens,
                    ShareWithin(allowable, meanPercent, spread),
                    (double)item.SharePercentMinimum / 100,
                    item.ConfidenceLevel
                ),
            _ => null,
        };

    /// <summary>The share of normal changes within a limit, 0 to 1.</summary>
    internal static double ShareWithin(double allowable, double meanPercent, double spread) =>
        Normal.Cdf((allowable - meanPercent) / spread)
        - Normal.Cdf((-allowable - meanPercent) / spread);
}
