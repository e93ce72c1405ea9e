namespace StabilityStudy.Core.Protocol;

/// <summary>Percentages of the baseline beyond which a limit is wide and its reader is told; our own figures.</summary>
public static class WideLimits
{
    /// <summary>For a mean, or a line through the means.</summary>
    public const decimal PercentOfMean = 15;

    /// <summary>For single specimens.</summary>
    public const decimal PercentOfOne = 25;
}
