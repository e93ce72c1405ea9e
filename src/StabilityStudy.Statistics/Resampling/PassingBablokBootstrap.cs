using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Resampling;

/// <summary>The change that a Passing–Bablok line predicts at one baseline level, with its bias-corrected and accelerated bootstrap interval.</summary>
/// <param name="Level">The level, in the unit of the data.</param>
/// <param name="Bias">a + (b − 1)·level of the line of all pairs, in the unit of the data.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
/// <param name="Replicates">Number of drawn samples B.</param>
/// <param name="Redrawn">Number of draws that gave no line and were drawn again.</param>
/// <param name="BiasCorrection">z₀, the normal score of the share of drawn values below the value.</param>
/// <param name="Acceleration">a, one sixth of the skewness of the leave-one-out values.</param>
/// <param name="Seed">The seed that makes the same interval again.</param>
public sealed record BootstrapBias(
    double Level,
    double Bias,
    double Lower,
    double Upper,
    double ConfidenceLevel,
    int Replicates,
    int Redrawn,
    double BiasCorrection,
    double Acceleration,
    ulong Seed
);

/// <summary>
/// Bias at decision levels from a Passing–Bablok line. Its paper gives an interval for slope and intercept each; one put together from their opposite ends can miss the estimate or be absurdly wide, because the
/// two move against each other. So pairs are drawn with replacement, and each sample has a line and a bias of its own.
/// </summary>
/// <remarks>
/// The interval is that of <see cref="BiasCorrectedInterval"/>. The slopes between twos of pairs are put in order once; the shifted median of a sample is then found by weights, a pair drawn k times
/// counting k times, and the slope between two copies of one pair is 0/0 and has none.
/// Assumptions: those of <see cref="PassingBablok.Fit"/>, which must give a line for all pairs; enough pairs that a sample of the sample behaves like one of the population (not much below 20). A sample
/// without a line (no slope, or a vertical one in the middle) is drawn again; that y rises with x is asked of all pairs only. At the ends of the baselines the interval is known to be
/// too short (see METHODS.md), so it describes and does not decide.
/// </remarks>
public static class PassingBablokBootstrap
{
    /// <summary>One bias a level, all from the same samples.</summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="levels">Levels, above zero, in the unit of the data.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <param name="replicates">Number of draws B, from 200 to a million.</param>
    /// <param name="seed">Any number; to be printed with the result.</param>
    /// <returns>For each level the bias; or the refusals of the line, too many values (more than 1,000 pairs), infinite slope when draws keep giving no line, or no interval at this size.</returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ImmutableArray<Estimate<BootstrapBias>> BiasAt(
        ExactPairs pairs,
        ReadOnlySpan<double> levels,
        double confidenceLevel,
        int replicates,
        ulong seed
    )
    {
        ArgumentNullException.ThrowIfNull(pairs);
        return BiasAt(
            pairs,
            PassingBablok.Fit(pairs, confidenceLevel),
            levels,
            confidenceLevel,
            replicates,
            seed
        );
    }

    /// <summary>The same for a caller who has the line already.</summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="whole">Their line, as <see cref="PassingBablok.Fit"/> gives it.</param>
    /// <param name="levels">Levels, above zero, in the unit of the data.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <param name="replicates">Number of draws B, from 200 to a million.</param>
    /// <param name="seed">Any number; to be printed with the result.</param>
    /// <returns>As without the line.</returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ImmutableArray<Estimate<BootstrapBias>> BiasAt(
        ExactPairs pairs,
        Estimate<PassingBablokFit> whole,
        ReadOnlySpan<double> levels,
        double confidenceLevel,
        int replicates,
        ulong seed
    )
    {
        ArgumentNullException.ThrowIfNull(pairs);
        DrawnSamples.RequireNumber(replicates, nameof(replicates));
        foreach (var level in levels)
        {
            BiasAtLevel.RequireLevel(level);
        }

        if (levels.IsEmpty)
        {
            return [];
        }

        if (!whole.TryGet(out var fit))
        {
            return EachRefused(levels.Length, whole.NotComputable!);
        }

        if (pairs.Count > LargestSample.Bootstrap)
        {
            return EachRefused(levels.Length, new(Refusal.TooManyForPassingBablokBootstrap));
        }

        var slopes = new WeightedSlopes(pairs);
        var drawn = DrawnSamples.Lines(pairs.Count, replicates, seed, slopes.LineOf);
        Line?[] leaveOneOut =
        [
            .. Enumerable.Range(0, pairs.Count).Select(left => slopes.LineWithout(left)),
        ];
        if (Array.Exists(drawn, draw => draw.Line is null) || leaveOneOut.Contains(null))
        {
            return EachRefused(levels.Length, new(Refusal.DrawnWithoutLine));
        }

        var redrawn = drawn.Sum(draw => draw.Redrawn);
        var full = new Line(fit.Intercept, fit.Slope);
        var biases = ImmutableArray.CreateBuilder<Estimate<BootstrapBias>>(levels.Length);
        foreach (var level in levels)
        {
            var at = level;
            double Bias(Line? line) => line!.Intercept + ((line.Slope - 1) * at);
            var interval = BiasCorrectedInterval.Of(
                Bias(full),
                [.. drawn.Select(draw => Bias(draw.Line))],
                [.. leaveOneOut.Select(Bias)],
                Math.Abs(full.Intercept) + (Math.Abs(full.Slope) * at) + at,
                confidenceLevel
            );
            biases.Add(
                interval.TryGet(out var found)
                    ? Estimate.Of(
                        new BootstrapBias(
                            at,
                            Bias(full),
                            found.Lower,
                            found.Upper,
                            confidenceLevel,
                            replicates,
                            redrawn,
                            found.BiasCorrection,
                            found.Acceleration,
                            seed
                        )
                    )
                    : interval.RefusedAs<BootstrapBias>()
            );
        }

        return biases.MoveToImmutable();
    }

    private static ImmutableArray<Estimate<BootstrapBias>> EachRefused(
        int levels,
        NotComputable why
    ) => [.. Enumerable.Repeat(Estimate.Refused<BootstrapBias>(why), levels)];
}
