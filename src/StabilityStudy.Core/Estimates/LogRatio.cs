namespace StabilityStudy.Core.Estimates;

/// <summary>A change as 100·ln(y/x).</summary>
internal static class LogRatio
{
    /// <summary>The same in percent.</summary>
    public static double Percent(double logRatio) => 100 * (Math.Exp(logRatio / 100) - 1);
}
