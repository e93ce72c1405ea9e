namespace StabilityStudy.Statistics.Drift;

/// <summary>
/// When each one-sided bound of the mean change reaches the limit on its side: no root where the bound runs the other way, one where the drift has a clear direction, two where it may go either
/// way.
/// </summary>
/// <param name="LowerLimitHours">Time since collection at which the lower bound reaches the lower limit, in hours; null when it never does.</param>
/// <param name="UpperLimitHours">Time since collection at which the upper bound reaches the upper limit, in hours; null when it never does.</param>
public sealed record CrossingRoots(double? LowerLimitHours, double? UpperLimitHours)
{
    /// <summary>The earlier of the two; null without a root.</summary>
    public double? First =>
        LowerLimitHours is { } lower && UpperLimitHours is { } upper
            ? Math.Min(lower, upper)
            : LowerLimitHours ?? UpperLimitHours;
}
