using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Estimates;

/// <summary>A change as 100·ln(y/x).</summary>
internal static class LogRatio
{
    /// <summary>The same in percent.</summary>
    public static double Percent(double logRatio) => 100 * (Math.Exp(logRatio / 100) - 1);

    /// <summary>A change that differs from the mean of all, with its interval, in percent: half the interval is the root of the sum of squares of that of the mean and that of the difference.</summary>
    /// <param name="mean">The mean of the log-ratios with its interval.</param>
    /// <param name="beyondMean">By how much the change differs from it.</param>
    /// <param name="halfWidth">Half the interval of that difference.</param>
    public static (double Percent, double Lower, double Upper) BesideMean(
        ClusteredMeanInterval mean,
        double beyondMean,
        double halfWidth
    )
    {
        var change = mean.Mean + beyondMean;
        var half = double.Hypot((mean.Upper - mean.Lower) / 2, halfWidth);
        return (Percent(change), Percent(change - half), Percent(change + half));
    }
}
