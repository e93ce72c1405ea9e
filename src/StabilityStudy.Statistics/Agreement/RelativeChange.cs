namespace StabilityStudy.Statistics.Agreement;

/// <summary>Changes relative to the first member, one for each pair and in the order of the pairs.</summary>
/// <param name="Values">Percent, or 100 times a natural logarithm, as the method says.</param>
public sealed record RelativeChanges(ImmutableArray<double> Values);

/// <summary>The change of each pair relative to its first member.</summary>
/// <remarks>
/// Percent: 100·(y − x)/x. Log-ratio: 100·ln(y/x), which treats x and y alike (Cole 2000, Statistics in Medicine 19:3109–3125, cited from memory)
/// and does not drift upward when the first member is noisy.
/// The quotients are taken from whole numbers in lowest terms, so that the same pair on another decimal scale gives
/// the same bits and ties stay ties. Smallest n: 0.
/// </remarks>
public static class RelativeChange
{
    /// <summary>100·(y − x)/x for each pair, in percent.</summary>
    /// <returns>A first member of zero or below: <see cref="AssumptionCode.ValueNotPositive"/>.</returns>
    public static Estimate<RelativeChanges> Percent(ExactPairs pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        return pairs.Percent;
    }

    /// <summary>100·ln(y/x) for each pair; close to percent when small.</summary>
    /// <returns>A member of zero or below: <see cref="AssumptionCode.ValueNotPositive"/>.</returns>
    public static Estimate<RelativeChanges> LogRatio(ExactPairs pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        return pairs.LogRatio;
    }

    internal static Estimate<RelativeChanges> PercentOf(ExactPairs pairs) =>
        pairs.ScaledX.Any(x => x <= 0)
            ? Estimate.Refused<RelativeChanges>(Refusal.NotPositiveForPercent)
            : Each(
                pairs,
                static (x, y) =>
                    Math.Abs(y - x) <= long.MaxValue / 100
                        ? ExactQuotient.Of(100 * (y - x), x)
                        : ExactQuotient.Of(100 * ((Int128)y - x), x)
            );

    internal static Estimate<RelativeChanges> LogRatioOf(ExactPairs pairs) =>
        pairs.ScaledX.Any(x => x <= 0) || pairs.ScaledY.Any(y => y <= 0)
            ? Estimate.Refused<RelativeChanges>(Refusal.NotPositiveForLogRatio)
            : Each(pairs, static (x, y) => 100 * Math.Log(ExactQuotient.Of(y, x)));

    private static Estimate<RelativeChanges> Each(ExactPairs pairs, Func<long, long, double> change)
    {
        var values = ImmutableArray.CreateBuilder<double>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            values.Add(change(pairs.ScaledX[i], pairs.ScaledY[i]));
        }

        return Estimate.Of(new RelativeChanges(values.MoveToImmutable()));
    }
}
