using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Planning;

/// <summary>The limit that a supposed mean change is measured by.</summary>
internal static class AllowableMean
{
    /// <summary>The limit of the first criterion on a mean; without one, that of the first criterion with a limit; null without any.</summary>
    public static Limit? LimitOf(CellContext context) =>
        context
            .Applying.Where(item => item.Limit is not null)
            .OrderBy(item => item.Criterion is BiasCriterion ? 0 : 1)
            .Select(item => item.Limit)
            .FirstOrDefault();

    /// <summary>A limit as a percentage of a baseline above zero.</summary>
    public static double PercentAt(double baseline, Limit limit) =>
        Math.Max(
            (double)(limit.Percent ?? 0),
            100 * (double)(limit.AbsoluteInUnit ?? 0) / baseline
        );
}
