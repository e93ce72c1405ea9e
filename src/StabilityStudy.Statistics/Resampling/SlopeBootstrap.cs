using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Resampling;

/// <summary>A slope with its bias-corrected and accelerated bootstrap interval.</summary>
/// <param name="Value">Slope from all pairs.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
/// <param name="Replicates">Number of drawn samples B.</param>
/// <param name="Redrawn">Number of draws that gave no line and were drawn again.</param>
/// <param name="BiasCorrection">z₀, the normal score of the share of drawn slopes below the slope.</param>
/// <param name="Acceleration">a, one sixth of the skewness of the leave-one-out slopes.</param>
/// <param name="Seed">The seed that makes the same interval again.</param>
public sealed record SlopeBootstrapInterval(
    double Value,
    double Lower,
    double Upper,
    double ConfidenceLevel,
    int Replicates,
    int Redrawn,
    double BiasCorrection,
    double Acceleration,
    ulong Seed
);

/// <summary>BCa bootstrap of the slope of a Deming line: pairs are drawn with replacement, as many as there are.</summary>
/// <remarks>
/// z₀ = Φ⁻¹((#below + #at or below)/(2B)); a = Σ(θ̄ − θ₍ᵢ₎)³/(6·(Σ(θ̄ − θ₍ᵢ₎)²)^1.5) from the leave-one-out slopes, 0 when the denominator is 0; ends at the shares Φ(z₀ + (z₀ + z)/(1 − a(z₀ + z))), z = Φ⁻¹((1 ∓ level)/2), of the
/// sorted slopes by quantile type 7 of Hyndman and Fan (1996).
/// Source: Efron (1987), J Am Stat Assoc 82:171–185; Efron and Tibshirani (1993), section 14.3 (cited from memory).
/// Assumptions: independent pairs; enough of them that a sample of the sample behaves like one of the population (not much below 20).
/// Each draw has a seed of its own, so that the result does not depend on the number of threads. A draw without a line (all x the same, a vertical line) is drawn again.
/// </remarks>
public static class SlopeBootstrap
{
    /// <summary>Fewer draws say too little about the ends of a 95 % interval.</summary>
    private const int FewestReplicates = 200;

    private const int MostReplicates = 1_000_000;

    /// <summary>Usual data need none or one; data that need more have no bootstrap distribution of a slope.</summary>
    private const int MostRedrawsOfOne = 20;

    /// <summary>The slope of <see cref="DemingRegression"/>.</summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="errorVarianceRatio">λ, the error variance of x divided by that of y; above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <param name="replicates">Number of draws B, from 200 to a million.</param>
    /// <param name="seed">Any number; to be printed with the result.</param>
    /// <returns>The interval; or the refusals of the line, infinite slope when draws keep giving no line, or no interval at this size when the slope lies beyond all drawn ones or the correction leaves the scale.</returns>
    /// <exception cref="ArgumentException">An argument is outside its range, or the lengths differ.</exception>
    public static Estimate<SlopeBootstrapInterval> Deming(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double confidenceLevel,
        int replicates,
        ulong seed
    )
    {
        PairedValues.Require(x, y);
        PairedValues.RequireErrorVarianceRatio(errorVarianceRatio);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (replicates is < FewestReplicates or > MostReplicates)
        {
            throw new ArgumentException(
                "There are from 200 to a million draws.",
                nameof(replicates)
            );
        }

        Estimate<Line> Estimator(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys) =>
            DemingRegression.FitLine(xs, ys, errorVarianceRatio);

        var jackknife = JackknifedLine.Fit(x, y, Estimator);
        if (!jackknife.TryGet(out var lines))
        {
            return new Estimate<SlopeBootstrapInterval>(null, jackknife.NotComputable, []);
        }

        var draws = Draw(x.ToArray(), y.ToArray(), Estimator, replicates, seed);
        if (Array.Exists(draws, draw => draw.Line is null))
        {
            return Estimate.Refused<SlopeBootstrapInterval>(
                AssumptionCode.InfiniteSlope,
                "Samples drawn from these pairs keep giving no line."
            );
        }

        double[] slopes = [.. draws.Select(draw => draw.Line?.Slope ?? 0).Order()];
        return Interval(slopes, lines, confidenceLevel, draws.Sum(draw => draw.Redrawn), seed);
    }

    private static (Line? Line, int Redrawn)[] Draw(
        double[] x,
        double[] y,
        LineEstimator estimator,
        int replicates,
        ulong seed
    )
    {
        var master = new SeededRandom(seed);
        var seeds = new ulong[replicates];
        for (var i = 0; i < replicates; i++)
        {
            seeds[i] = master.NextUInt64();
        }

        var draws = new (Line? Line, int Redrawn)[replicates];
        Parallel.For(0, replicates, i => draws[i] = DrawOne(x, y, estimator, seeds[i]));
        return draws;
    }

    private static (Line? Line, int Redrawn) DrawOne(
        double[] x,
        double[] y,
        LineEstimator estimator,
        ulong seed
    )
    {
        var random = new SeededRandom(seed);
        var drawnX = new double[x.Length];
        var drawnY = new double[x.Length];
        for (var redrawn = 0; redrawn <= MostRedrawsOfOne; redrawn++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var index = (int)(random.NextDouble() * x.Length);
                drawnX[i] = x[index];
                drawnY[i] = y[index];
            }

            if (estimator(drawnX, drawnY).TryGet(out var line))
            {
                return (line, redrawn);
            }
        }

        return (null, MostRedrawsOfOne);
    }

    private static Estimate<SlopeBootstrapInterval> Interval(
        double[] sorted,
        JackknifedLine lines,
        double confidenceLevel,
        int redrawn,
        ulong seed
    )
    {
        var slope = lines.Full.Slope;
        var below = sorted.Count(value => value < slope);
        var upTo = sorted.Count(value => value <= slope);
        var share = (below + upTo) / (2.0 * sorted.Length);
        if (share is <= 0 or >= 1)
        {
            return NoInterval();
        }

        var correction = Normal.Quantile(share);
        var acceleration = Acceleration([.. lines.LeaveOneOut.Select(line => line.Slope)]);
        var lower = End((1 - confidenceLevel) / 2);
        var upper = End((1 + confidenceLevel) / 2);
        return lower is { } from && upper is { } to
            ? Estimate.Of(
                new SlopeBootstrapInterval(
                    slope,
                    from,
                    to,
                    confidenceLevel,
                    sorted.Length,
                    redrawn,
                    correction,
                    acceleration,
                    seed
                )
            )
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

    private static double Acceleration(double[] slopes)
    {
        var mean = slopes.Sum() / slopes.Length;
        var squares = slopes.Sum(slope => (mean - slope) * (mean - slope));
        var cubes = slopes.Sum(slope => (mean - slope) * (mean - slope) * (mean - slope));
        var denominator = 6 * Math.Pow(squares, 1.5);
        return denominator == 0 ? 0 : cubes / denominator;
    }

    private static Estimate<SlopeBootstrapInterval> NoInterval() =>
        Estimate.Refused<SlopeBootstrapInterval>(
            AssumptionCode.NoIntervalAtThisSize,
            "The slopes of the drawn samples lie too far to one side of the slope for a corrected interval."
        );
}
