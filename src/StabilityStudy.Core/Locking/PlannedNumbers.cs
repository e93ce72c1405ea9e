namespace StabilityStudy.Core.Locking;

/// <summary>
/// How many specimens and looks were planned at a time, by the locks. A larger number counts for specimens collected
/// after it was locked, a larger number of looks for those made after it was locked.
/// </summary>
internal sealed record PlannedNumbers(StudyProtocol Protocol, ImmutableArray<ProtocolLock> Locks)
{
    /// <summary>How many specimens of a group count up to one collected at a time.</summary>
    public int SpecimensAt(PatientGroup group, DateTimeOffset collected) =>
        InForce(collected)?.Protocol is { } locked
            ? Math.Min(group.Specimens, SpecimensOf(group.Id, locked))
            : group.Specimens;

    /// <summary>The instruments for each of which that number holds. An amendment that brings them in, and so would add places, comes too late for that: none are named then.</summary>
    public ImmutableArray<string> Instruments =>
        Locks.All(item =>
            item.Protocol is not { } locked
            || locked.Instruments.SequenceEqual(Protocol.Instruments, StringComparer.Ordinal)
        )
            ? Protocol.Instruments
            : [];

    /// <summary>How many looks at growing data were planned when somebody looked.</summary>
    public int LooksAt(DateTimeOffset look) =>
        Locks.IsEmpty ? Protocol.PlannedLooks
        : InForce(look)?.Protocol is { } locked
            ? Math.Min(Protocol.PlannedLooks, locked.PlannedLooks)
        : 1;

    private static int SpecimensOf(string group, StudyProtocol locked) =>
        locked.Groups.FirstOrDefault(item => item.Id == group)?.Specimens ?? 0;

    private ProtocolLock? InForce(DateTimeOffset at)
    {
        for (var i = Locks.Length - 1; i > 0; i--)
        {
            if (Locks[i].Latest < at)
            {
                return Locks[i];
            }
        }

        return Locks.FirstOrDefault();
    }
}
