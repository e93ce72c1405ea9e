using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Criteria;

/// <summary>One figure by which a criterion is judged and on which the number of specimens bears: a mean, a share, the change at a level, the drift of a shape.</summary>
/// <param name="Figure">Which figure of which criterion.</param>
/// <param name="IsBeyond">Whether the truth, were it what was observed, would not meet the criterion.</param>
/// <param name="IsOpen">Whether it is open because there are too few specimens.</param>
/// <param name="PowerAt">The chance that so many specimens meet it; null when it cannot be computed.</param>
internal sealed record SizedFigure(
    JudgedFigure Figure,
    bool IsBeyond,
    bool IsOpen,
    Func<int, double>? PowerAt
)
{
    /// <summary>More than a study of one laboratory collects.</summary>
    public const int MostSpecimens = 200;

    /// <summary>A figure whose interval must lie between two limits.</summary>
    public static SizedFigure OfInterval(
        JudgedFigure figure,
        double mean,
        Scatter scatter,
        (double Lower, double Upper) limits,
        double confidenceLevel,
        bool isOpen
    ) =>
        new(
            figure,
            mean <= limits.Lower || mean >= limits.Upper,
            isOpen,
            scatter.IsNone
                ? null
                : specimens => scatter.PowerAt(specimens, mean, limits, confidenceLevel)
        );

    /// <summary>A share whose exact bound must reach the required one.</summary>
    public static SizedFigure OfShare(
        JudgedFigure figure,
        double share,
        double required,
        double confidenceLevel,
        bool isOpen,
        bool withoutErrorControl = false
    ) =>
        new(
            figure,
            share <= required,
            isOpen,
            withoutErrorControl
                ? null
                : specimens => IndividualPower.Of(specimens, share, required, confidenceLevel)
        );

    public static bool IsInterval(VerdictReason reason) =>
        reason is IntervalReason { Place: IntervalPlace.ReachesLimit };
}

/// <summary>A figure that a criterion holds to a limit.</summary>
/// <param name="Kind">Kind of the criterion.</param>
/// <param name="Criterion">Its key.</param>
/// <param name="Level">The decision level, where it has one figure a level; null for all its levels together.</param>
public sealed record JudgedFigure(CriterionKind Kind, string Criterion, decimal? Level = null);

/// <summary>How a figure scatters between specimens, and between the means of the clusters with the widest interval; 0 where it does not decide.</summary>
internal sealed record Scatter(double OfSpecimens, double OfClusters, double SpecimensPerCluster)
{
    public static Scatter None { get; } = new(0, 0, 1);

    public bool IsNone => OfSpecimens == 0 && OfClusters == 0;

    /// <summary>The scatter of a mean of which the figure is so many times.</summary>
    public static Scatter OfMean(ClusteredMeanInterval mean, double factor)
    {
        var widest = mean.ByCluster.MaxBy(item => item.Upper - item.Lower);
        return new(
            mean.BySpecimen.StandardDeviation * factor,
            widest is null
                ? 0
                : widest.StandardError * Math.Sqrt(widest.Clusters) * Math.Abs(factor),
            (double)mean.BySpecimen.Count / (widest?.Clusters ?? 1)
        );
    }

    /// <summary>The lesser chance of the two, as the interval is the wider of the two, with as many specimens a cluster as here.</summary>
    public double PowerAt(
        int specimens,
        double mean,
        (double Lower, double Upper) limits,
        double confidenceLevel
    )
    {
        return Math.Min(
            Of(specimens, OfSpecimens),
            Of((int)(specimens / SpecimensPerCluster), OfClusters)
        );

        double Of(int count, double standardDeviation) =>
            standardDeviation == 0 ? 1
            : count < 2 ? 0
            : EquivalencePower.Of(
                count,
                mean,
                standardDeviation,
                limits.Lower,
                limits.Upper,
                confidenceLevel
            );
    }
}
