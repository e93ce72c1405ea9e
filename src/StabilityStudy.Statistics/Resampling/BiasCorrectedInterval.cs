using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Resampling;

/// <summary>The BCa interval of an estimate from its drawn values and its leave-one-out values.</summary>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="BiasCorrection">z₀.</param>
/// <param name="Acceleration">a.</param>
internal sealed record BiasCorrectedInterval(
    double Lower,
    double Upper,
    double BiasCorrection,
    double Acceleration
)
{
    /// <summary>What a few operations on doubles add to the same quotient of whole numbers, found on another way.</summary>
    private const double RelativeRounding = 1e-13;

    /// <summary>
    /// z₀ = Φ⁻¹((#below + #at or below)/(2B)); a = Σ(θ̄ − θ₍ᵢ₎)³/(6·(Σ(θ̄ − θ₍ᵢ₎)²)^1.5), 0 when the denominator is 0; ends at the shares Φ(z₀ + (z₀ + z)/(1 − a(z₀ + z))), z = Φ⁻¹((1 ∓ level)/2), of the
    /// drawn values by quantile type 7 of Hyndman and Fan (1996). Efron (1987), J Am Stat Assoc 82:171–185; Efron and Tibshirani (1993), section 14.3 (cited from memory).
    /// </summary>
    /// <param name="estimate">The estimate from all pairs.</param>
    /// <param name="drawn">Its values in the drawn samples, in any order.</param>
    /// <param name="leaveOneOut">Its values without each pair in turn.</param>
    /// <param name="scale">The largest terms that the values are sums of: a value nearer to the estimate than their rounding is at it.</param>
    /// <param name="confidenceLevel">Two-sided level.</param>
    /// <returns>The interval; or none where the estimate lies beyond all drawn values or the correction leaves the scale.</returns>
    public static Estimate<BiasCorrectedInterval> Of(
        double estimate,
        ReadOnlySpan<double> drawn,
        ReadOnlySpan<double> leaveOneOut,
        double scale,
        double confidenceLevel
    )
    {
        var sorted = drawn.ToArray();
        Array.Sort(sorted);
        var rounding = RelativeRounding * scale;
        var below = sorted.Count(value => value < estimate - rounding);
        var upTo = sorted.Count(value => value <= estimate + rounding);
        var share = (below + upTo) / (2.0 * sorted.Length);
        if (share is <= 0 or >= 1)
        {
            return NoInterval();
        }

        var correction = Normal.Quantile(share);
        var acceleration = AccelerationOf(leaveOneOut.ToArray());
        var lower = End((1 - confidenceLevel) / 2);
        var upper = End((1 + confidenceLevel) / 2);
        return lower is { } from && upper is { } to
            ? Estimate.Of(new BiasCorrectedInterval(from, to, correction, acceleration))
            : NoInterval();

        double? End(double tail)
        {
            var score = correction + Normal.Quantile(tail);
            var stretch = 1 - (acceleration * score);
            return stretch > 0
                ? Percentile.Of(
                    sorted,
                    Normal.Cdf(correction + (score / stretch)),
                    PercentileType.Type7
                )
                : null;
        }
    }

    private static double AccelerationOf(double[] values)
    {
        var mean = values.Sum() / values.Length;
        var squares = values.Sum(value => (mean - value) * (mean - value));
        var cubes = values.Sum(value => (mean - value) * (mean - value) * (mean - value));
        var denominator = 6 * Math.Pow(squares, 1.5);
        return denominator == 0 ? 0 : cubes / denominator;
    }

    private static Estimate<BiasCorrectedInterval> NoInterval() =>
        Estimate.Refused<BiasCorrectedInterval>(Refusal.DrawnToOneSide);
}
