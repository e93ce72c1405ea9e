namespace StabilityStudy.Core.Planning;

/// <summary>The smallest mean change at which a criterion is no longer true: there a study errs most often when it supports.</summary>
internal static class SmallestUntrue
{
    /// <summary>That change, percent of the median baseline; null when no criterion has a limit.</summary>
    public static double? Percent(CellContext context, SupposedResults supposed) =>
        context
            .Applying.Where(item => item.Limit is not null)
            .Select(item =>
                (double?)
                    item.Criterion.SmallestUntruePercent(
                        PercentAt(supposed.BaselineMedian, item.Limit!),
                        supposed.TotalSdPercent
                    )
            )
            .Min();

    private static double PercentAt(double baseline, Limit limit) =>
        Math.Max(
            (double)(limit.Percent ?? 0),
            100 * (double)(limit.AbsoluteInUnit ?? 0) / baseline
        );
}
