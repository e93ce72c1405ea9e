using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Planning;

/// <summary>The smallest mean change at which a criterion is no longer true: there a study errs most often when it supports.</summary>
internal static class SmallestUntrue
{
    private const int Halvings = 60;

    /// <summary>That change, percent of the median baseline; null when no criterion has a limit.</summary>
    public static double? Percent(CellContext context, SupposedResults supposed)
    {
        double[] changes =
        [
            .. context
                .Applying.Where(item => item.Limit is not null)
                .Select(item =>
                    Percent(
                        item.Criterion,
                        PercentAt(supposed.BaselineMedian, item.Limit!),
                        supposed.TotalSdPercent
                    )
                ),
        ];
        return changes.Length == 0 ? null : changes.Min();
    }

    private static double Percent(Criterion criterion, double allowable, double spread) =>
        criterion is IndividualCriterion individual
            ? OfShare((double)individual.SharePercentMinimum / 100, allowable, spread)
            : allowable;

    /// <summary>The mean of normal changes at which just the required share lies within the limit; 0 where the spread alone brings more outside.</summary>
    private static double OfShare(double required, double allowable, double spread)
    {
        var (low, high) = (0.0, allowable + (10 * spread));
        if (CriterionPower.ShareWithin(allowable, 0, spread) <= required)
        {
            return 0;
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) =
                CriterionPower.ShareWithin(allowable, middle, spread) > required
                    ? (middle, high)
                    : (low, middle);
        }

        return low;
    }

    private static double PercentAt(double baseline, Limit limit) =>
        Math.Max(
            (double)(limit.Percent ?? 0),
            100 * (double)(limit.AbsoluteInUnit ?? 0) / baseline
        );
}
