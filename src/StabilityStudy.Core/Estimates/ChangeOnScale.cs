using System.Diagnostics;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Estimates;

/// <summary>The change of each pair on one scale, with the allowable interval on the same scale.</summary>
/// <param name="Values">One change a pair.</param>
/// <param name="LowerLimit">Allowable change downward, negative.</param>
/// <param name="UpperLimit">Allowable change upward.</param>
/// <param name="Resolution">Half a reporting increment on this scale, at the pair where it weighs most.</param>
internal sealed record ChangeOnScale(
    ImmutableArray<double> Values,
    double LowerLimit,
    double UpperLimit,
    double Resolution
)
{
    /// <summary>Expresses the changes and a limit on a scale.</summary>
    /// <returns>
    /// Refused when a baseline or delayed result is not above zero and the scale divides by it (a share of an allowance
    /// with an absolute part never does), or when the limit cannot be expressed on the scale.
    /// </returns>
    public static Estimate<ChangeOnScale> Of(CellData data, ChangeScale scale, Limit limit)
    {
        if (LimitsOn(scale, limit) is not var (lower, upper))
        {
            return Estimate.Refused<ChangeOnScale>(Refusal.LimitNotOnScale);
        }

        var half = data.ReportingIncrement / 2;
        switch (scale)
        {
            case ChangeScale.Absolute:
                return Estimate.Of(new ChangeOnScale(data.Pairs.Difference, lower, upper, half));
            case ChangeScale.Share:
                var allowance = AllowanceOf(limit);
                if (allowance.Absolute is null && data.Pairs.ScaledX.Any(x => x <= 0))
                {
                    return Estimate.Refused<ChangeOnScale>(Refusal.NotPositiveForShare);
                }

                return Estimate.Of(
                    new ChangeOnScale(
                        AllowableDifference.Shares(data.Pairs, allowance),
                        lower,
                        upper,
                        half / data.Pairs.X.Select(allowance.At).DefaultIfEmpty(1).Min()
                    )
                );
            case ChangeScale.LogRatio:
                return Relative(RelativeChange.LogRatio(data.Pairs), lower, upper, data, half);
            case ChangeScale.Percent:
                return Relative(RelativeChange.Percent(data.Pairs), lower, upper, data, half);
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>The limit as the statistics take it.</summary>
    public static Allowance AllowanceOf(Limit limit) => new(limit.AbsoluteInUnit, limit.Percent);

    /// <summary>
    /// The allowable change downward and upward on a scale, whatever the data: ± the percentage, ± the amount, ± 1, or
    /// 100·ln(1 ∓ p/100). Null when the limit has no part for the scale.
    /// </summary>
    public static (double Lower, double Upper)? LimitsOn(ChangeScale scale, Limit limit) =>
        (scale, limit) switch
        {
            (ChangeScale.Absolute, { AbsoluteInUnit: > 0 and var amount }) => (
                -(double)amount,
                (double)amount
            ),
            (ChangeScale.Percent, { Percent: > 0 and var percent }) => (
                -(double)percent,
                (double)percent
            ),
            (ChangeScale.LogRatio, { Percent: > 0 and < 100 and var percent }) => (
                100 * Math.Log(1 - (double)percent / 100),
                100 * Math.Log(1 + (double)percent / 100)
            ),
            (ChangeScale.Share, { AbsoluteInUnit: > 0 } or { Percent: > 0 }) => (-1, 1),
            _ => null,
        };

    private static Estimate<ChangeOnScale> Relative(
        Estimate<RelativeChanges> changes,
        double lower,
        double upper,
        CellData data,
        double half
    ) =>
        changes.TryGet(out var relative)
            ? Estimate.Of(
                new ChangeOnScale(relative.Values, lower, upper, 100 * half / data.SmallestBaseline)
            )
            : changes.RefusedAs<ChangeOnScale>();
}
