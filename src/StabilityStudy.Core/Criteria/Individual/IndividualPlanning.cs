using StabilityStudy.Core.Planning;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>What a criterion on single specimens would say of normal changes.</summary>
internal static class IndividualPlanning
{
    private const int Halvings = 60;

    /// <summary>The chance that the exact bound reaches the required share; null without error control or without spread.</summary>
    public static double? Power(
        IndividualCriterion criterion,
        double allowable,
        SupposedResults supposed,
        double meanPercent
    ) =>
        criterion.Rule == DecisionRule.Confidence && supposed.TotalSdPercent is > 0 and var spread
            ? IndividualPower.Of(
                supposed.Conduct.Specimens,
                ShareWithin(allowable, meanPercent, spread),
                (double)criterion.SharePercentMinimum / 100,
                criterion.ConfidenceLevel
            )
            : null;

    /// <summary>The mean at which just the required share lies within the limit; 0 where the spread alone brings more outside.</summary>
    public static double SmallestUntruePercent(
        IndividualCriterion criterion,
        double allowable,
        double spread
    )
    {
        var required = (double)criterion.SharePercentMinimum / 100;
        var (low, high) = (0.0, allowable + (10 * spread));
        if (ShareWithin(allowable, 0, spread) <= required)
        {
            return 0;
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) =
                ShareWithin(allowable, middle, spread) > required ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The share of normal changes within a limit, 0 to 1.</summary>
    private static double ShareWithin(double allowable, double meanPercent, double spread) =>
        Normal.Cdf((allowable - meanPercent) / spread)
        - Normal.Cdf((-allowable - meanPercent) / spread);
}
