using StabilityStudy.Statistics.Location;

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
    /// <summary>What is left out in turn for the widest interval: single pairs, or whole clusters such as collection days.</summary>
    public IntervalSource DecidedBy { get; init; }

    /// <summary>The same with its interval lengthened for skewness.</summary>
    public BiasAtLevel Lengthened(SkewnessStretch stretch)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        return this with
        {
            Lower = stretch.LowerEnd(Bias, Lower),
            Upper = stretch.UpperEnd(Bias, Upper),
        };
    }

    /// <summary>
    /// The bias is jackknifed itself: put together from the intervals of slope and intercept it would miss their
    /// correlation, which is strong and negative. All intervals are centered on the same line, so the widest holds the others.
    /// </summary>
    /// <param name="byPair">The line with each pair left out.</param>
    /// <param name="byCluster">The line with each cluster of each clustering left out.</param>
    /// <param name="level">The level.</param>
    /// <param name="confidenceLevel">Two-sided level.</param>
    internal static Estimate<BiasAtLevel> Of(
        Estimate<JackknifedLine> byPair,
        ImmutableArray<(IntervalSource Source, Estimate<JackknifedLine> Lines)> byCluster,
        double level,
        double confidenceLevel
    )
    {
        if (!byPair.TryGet(out var lines))
        {
            return byPair.RefusedAs<BiasAtLevel>();
        }

        if (
            byCluster
                .Select(item => item.Lines.NotComputable)
                .FirstOrDefault(why => why is not null) is
            { } why
        )
        {
            return Estimate.Refused<BiasAtLevel>(why);
        }

        double Bias(Line line) => line.Intercept + ((line.Slope - 1) * level);
        var (decidedBy, bias) = byCluster
            .Select(item =>
                (item.Source, Interval: item.Lines.Value!.Interval(Bias, confidenceLevel))
            )
            .Prepend(
                (Source: IntervalSource.Specimens, Interval: lines.Interval(Bias, confidenceLevel))
            )
            .MaxBy(item => item.Interval.Upper);
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
                DecidedBy = decidedBy,
            }
        );
    }

    /// <exception cref="ArgumentException">A level is not a finite number above zero.</exception>
    internal static void RequireLevels(ImmutableArray<double> levels)
    {
        foreach (var level in levels)
        {
            RequireLevel(level);
        }
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
