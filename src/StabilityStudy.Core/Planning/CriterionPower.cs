using System.Collections.Immutable;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>The chance that one criterion is met, by its formula, as if no other were asked.</summary>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Power">The chance, 0 to 1: at the median baseline, with specimens that have nothing in common with others of their day.</param>
public sealed record CriterionPower(string Criterion, double Power)
{
    /// <summary>The criteria with a formula: a mean or a share that an interval holds to a limit.</summary>
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
                .Applying.Where(item => item.Limit is not null)
                .Select(item =>
                    (
                        item.Criterion.Id,
                        Power: PowerOf(
                            item.Criterion,
                            AllowableMean.PercentAt(supposed.BaselineMedian, item.Limit!),
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
            BiasCriterion { Rule: DecisionRule.Confidence } when specimens > 1 && spread > 0 =>
                EquivalencePower.Of(
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
                    Normal.Cdf((allowable - meanPercent) / spread)
                        - Normal.Cdf((-allowable - meanPercent) / spread),
                    (double)item.SharePercentMinimum / 100,
                    item.ConfidenceLevel
                ),
            _ => null,
        };
}
