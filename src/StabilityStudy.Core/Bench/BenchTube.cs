namespace StabilityStudy.Core.Bench;

/// <summary>A specimen that is to be drawn, with its tubes.</summary>
/// <param name="Code">Code of the draw.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Tubes">One for each test, in the order of time.</param>
/// <param name="Spare">A further tube for one that cannot be used; null without one.</param>
public sealed record BenchSpecimen(
    string Code,
    PatientGroup Group,
    ImmutableArray<BenchTube> Tubes,
    BenchTube? Spare
);

/// <summary>A tube before it is drawn: its times count from collection, or from thawing where the protocol says so.</summary>
/// <param name="Code">Code of the container.</param>
/// <param name="Letter">What tells it from the other tubes of the specimen.</param>
/// <param name="Storage">Storage in which it waits; null for the baseline and a spare.</param>
/// <param name="Occasion">Baseline or planned delay; the baseline for a spare, which has no time of its own.</param>
/// <param name="DrawPosition">Which of the tubes it is at the draw, from 1; null for a portion.</param>
/// <param name="Spin">When it is spun.</param>
/// <param name="Earliest">From when on it may be tested.</param>
/// <param name="Latest">Until when.</param>
/// <param name="RunOrder">Its place among the tubes of its run, from 1; 0 for a tube that is tested at once.</param>
public sealed record BenchTube(
    string Code,
    string Letter,
    Storage? Storage,
    TestOccasion Occasion,
    int? DrawPosition,
    SpinTime Spin,
    TimeSpan Earliest,
    TimeSpan Latest,
    int RunOrder
);

/// <summary>When a tube is spun, counted from collection.</summary>
/// <param name="Moment">In which way that is fixed.</param>
/// <param name="From">From when on; null where nothing limits that.</param>
/// <param name="By">Until when; null where nothing but the test limits that.</param>
public sealed record SpinTime(SpinMoment Moment, TimeSpan? From, TimeSpan? By)
{
    /// <summary>When a tube is spun.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="group">Patient group.</param>
    /// <param name="storage">Storage in which it waits; null for the baseline.</param>
    /// <param name="timePoint">Planned delay; null for the baseline.</param>
    public static SpinTime Of(
        StudyProtocol protocol,
        PatientGroup group,
        Storage? storage,
        TimePoint? timePoint
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(group);
        if (protocol.TimeOrigin == TimeOrigin.Thawing)
        {
            return new(SpinMoment.Already, null, null);
        }

        if (storage is null || timePoint is not { } planned)
        {
            return new(
                SpinMoment.AtOnce,
                null,
                group.BaselineSpunWithin
                    ?? (
                        protocol.Storages.All(item => item.State != StorageState.WholeBlood)
                            ? protocol.BaselineWithin
                            : null
                    )
            );
        }

        if (storage.State != StorageState.WholeBlood)
        {
            return protocol.TubePlan == TubePlan.TubePerTimePoint
                ? new(SpinMoment.AtOnce, null, group.BaselineSpunWithin ?? protocol.BaselineWithin)
                : new(SpinMoment.Already, null, null);
        }

        if (storage.SpinToTest is not { } longest)
        {
            return new(SpinMoment.NotStated, null, null);
        }

        // So late that even a tube tested at the end of its time was not spun too long before.
        var from = TimingRules.Planned(planned, protocol).Latest - longest;
        from = from < TimeSpan.Zero ? TimeSpan.Zero : from;
        return new(SpinMoment.Late, from, from < planned.Delay ? planned.Delay : null);
    }
}

/// <summary>In which way the time of spinning is fixed. The zero member asks somebody.</summary>
public enum SpinMoment
{
    /// <summary>The protocol does not say.</summary>
    NotStated,

    /// <summary>On arrival.</summary>
    AtOnce,

    /// <summary>Shortly before the test.</summary>
    Late,

    /// <summary>With the first tube, or before the time began to count.</summary>
    Already,
}
