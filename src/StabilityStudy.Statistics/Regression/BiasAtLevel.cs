namespace StabilityStudy.Statistics.Regression;

/// <summary>The change that a fitted line predicts at one baseline level, such as a decision level.</summary>
/// <param name="Level">The level, in the unit of the data.</param>
/// <param name="PredictedDelayed">a + b·level, in the unit of the data.</param>
/// <param name="Bias">a + (b − 1)·level, in the unit of the data.</param>
/// <param name="BiasPercent">100·bias/level.</param>
/// <param name="StandardError">Standard error of the bias, in the unit of the data.</param>
/// <param name="Lower">Lower end of the two-sided interval of the bias, in the unit of the data.</param>
/// <param name="Upper">Upper end of the two-sided interval of the bias, in the unit of the data.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
public sealed record BiasAtLevel(
    double Level,
    double PredictedDelayed,
    double Bias,
    double BiasPercent,
    double StandardError,
    double Lower,
    double Upper,
    double ConfidenceLevel
)
{
    /// <summary>
    /// The bias is jackknifed itself: put together from the intervals of slope and intercept it would miss their
    /// correlation, which is strong and negative.
    /// </summary>
    internal static Estimate<BiasAtLevel> Of(
        Estimate<JackknifedLine> fit,
        double level,
        double confidenceLevel
    )
    {
        if (!fit.TryGet(out var lines))
        {
            return new Estimate<BiasAtLevel>(null, fit.NotComputable, []);
        }

        var bias = lines.Interval(
            line => line.Intercept + ((line.Slope - 1) * level),
            confidenceLevel
        );
        return Estimate.Of(
            new BiasAtLevel(
                level,
                lines.Full.Intercept + (lines.Full.Slope * level),
                bias.Value,
                100 * bias.Value / level,
                bias.StandardError,
                bias.Lower,
                bias.Upper,
                confidenceLevel
            )
        );
    }

    /// <exception cref="ArgumentException">The level is not a finite number above zero.</exception>
    internal static void RequireLevel(double level)
    {
        if (!(level > 0 && double.IsFinite(level)))
        {
            throw new ArgumentException(
                "A level is a finite number above zero, because the bias is also given in percent of it.",
                nameof(level)
            );
        }
    }
}
