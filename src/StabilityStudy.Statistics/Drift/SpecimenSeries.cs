namespace StabilityStudy.Statistics.Drift;

/// <summary>The changes of one specimen from its own baseline at several delays.</summary>
public sealed record SpecimenSeries
{
    /// <summary>Creates a series; see the properties.</summary>
    /// <exception cref="ArgumentException">A delay is negative or not finite, a change is not finite, or delays and changes differ in number.</exception>
    public SpecimenSeries(
        int specimen,
        double baselineDelayHours,
        ImmutableArray<double> delayHours,
        ImmutableArray<double> changePercent
    )
    {
        if (!IsDelay(baselineDelayHours))
        {
            throw new ArgumentException(
                "A delay is finite and not negative.",
                nameof(baselineDelayHours)
            );
        }

        if (delayHours.IsDefault || !delayHours.All(IsDelay))
        {
            throw new ArgumentException("A delay is finite and not negative.", nameof(delayHours));
        }

        if (
            changePercent.IsDefault
            || changePercent.Length != delayHours.Length
            || !changePercent.All(double.IsFinite)
        )
        {
            throw new ArgumentException(
                "Each delay needs one finite change.",
                nameof(changePercent)
            );
        }

        Specimen = specimen;
        BaselineDelayHours = baselineDelayHours;
        DelayHours = delayHours;
        ChangePercent = changePercent;
    }

    /// <summary>Number that tells specimens apart.</summary>
    public int Specimen { get; }

    /// <summary>Actual time from collection to the baseline measurement, in hours.</summary>
    public double BaselineDelayHours { get; }

    /// <summary>Actual times from collection to the delayed measurements, in hours.</summary>
    public ImmutableArray<double> DelayHours { get; }

    /// <summary>100·(delayed − baseline)/baseline, one for each delay, in percent.</summary>
    public ImmutableArray<double> ChangePercent { get; }

    private static bool IsDelay(double hours) => hours >= 0 && double.IsFinite(hours);
}
