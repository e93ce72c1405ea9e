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
/// The interval is that of <see cref="BiasCorrectedInterval"/>.
/// Assumptions: independent pairs; enough of them that a sample of the sample behaves like one of the population (not much below 20).
/// A draw without a line (all x the same, a vertical line) is drawn again.
/// </remarks>
public static class SlopeBootstrap
{
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
        DrawnSamples.RequireNumber(replicates, nameof(replicates));

        Estimate<Line> Estimator(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys) =>
            DemingRegression.FitLine(xs, ys, errorVarianceRatio);

        var jackknife = JackknifedLine.Fit(x, y, Estimator, leaveOut: null);
        if (!jackknife.TryGet(out var lines))
        {
            return jackknife.RefusedAs<SlopeBootstrapInterval>();
        }

        var (ownX, ownY) = (x.ToArray(), y.ToArray());
        var drawn = DrawnSamples.Lines(
            ownX.Length,
            replicates,
            seed,
            sample =>
                Estimator(
                    Array.ConvertAll(sample, pair => ownX[pair]),
                    Array.ConvertAll(sample, pair => ownY[pair])
                ).Value
        );
        if (Array.Exists(drawn, draw => draw.Line is null))
        {
            return Estimate.Refused<SlopeBootstrapInterval>(Refusal.DrawnWithoutLine);
        }

        var slope = lines.Full.Slope;
        var interval = BiasCorrectedInterval.Of(
            slope,
            [.. drawn.Select(draw => draw.Line!.Slope)],
            [.. lines.LeaveOneOut.Select(line => line.Slope)],
            Math.Abs(slope),
            confidenceLevel
        );
        return interval.TryGet(out var found)
            ? Estimate.Of(
                new SlopeBootstrapInterval(
                    slope,
                    found.Lower,
                    found.Upper,
                    confidenceLevel,
                    replicates,
                    drawn.Sum(draw => draw.Redrawn),
                    found.BiasCorrection,
                    found.Acceleration,
                    seed
                )
            )
            : interval.RefusedAs<SlopeBootstrapInterval>();
    }
}
