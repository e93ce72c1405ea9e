namespace StabilityStudy.Statistics.Drift;

/// <summary>When a one-sided bound of the mean change first leaves the allowable change.</summary>
public abstract record CrossingTime
{
    private CrossingTime() { }

    /// <summary>The bounds are outside at the baseline already.</summary>
    public sealed record AlreadyOutside : CrossingTime;

    /// <summary>The bounds never leave the limits.</summary>
    public sealed record Never : CrossingTime;

    /// <summary>A bound reaches its limit at a time.</summary>
    /// <param name="Hours">Time since collection, in hours.</param>
    public sealed record At(double Hours) : CrossingTime;
}
