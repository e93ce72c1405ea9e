namespace StabilityStudy.Statistics.Regression;

/// <summary>The change that a fitted line predicts at one baseline level, such as a decision level.</summary>
/// <param name="Level">The level, in the unit of the data.</param>
/// <param name="PredictedDelayed">a + b·level, in the unit of the data.</param>
/// <param name="Bias">a + (b − 1)·level, in the unit of the data.</param>
/// <param name="BiasPercent">100·bias/level.</param>
/// <param name="StandardError">Standard error of the bias, in the unit of the data; that of the wider interval.</param>
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
    /// <summary>Whether the wider interval came from leaving out whole clusters, such as collection days, in place of single pairs.</summary>
    public bool DecidedByClusters { get; init; }

    /// <summary>
    /// The bias is jackknifed itself: put together from the intervals of slope and intercept it would miss their
    /// correlation, which is strong and negative. Both intervals are centered on the same line, so one holds the other.
    /// </summary>
    /// <param name="byPair">The line with each pair left out.</param>
    /// <param name="byCluster">The line with each cluster left out; null without clusters.</param>
    /// <param name="level">The level.</param>
    /// <param name="confidenceLevel">Two-sided level.</param>
    internal static Estimate<BiasAtLevel> Of(
        Estimate<JackknifedLine> byPair,
        Estimate<JackknifedLine>? byCluster,
        double level,
        double confidenceLevel
    )
    {
        if (!byPair.TryGet(out var lines))
        {
            return byPair.RefusedAs<BiasAtLevel>();
        }

        if (byCluster is { NotComputable: { } why })
        {
            return Estimate.Refused<BiasAtLevel>(why);
        }

        double Bias(Line line) => line.Intercept + ((line.Slope - 1) * level);
        var narrow = lines.Interval(Bias, confidenceLevel);
        var wide = byCluster?.Value?.Interval(Bias, confidenceLevel);
        var decidedByClusters = wide is not null && wide.Upper > narrow.Upper;
        var bias = decidedByClusters ? wide! : narrow;
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
            {
                DecidedByClusters = decidedByClusters,
            }
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
