namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>What archive time stamps show: that all before them existed at their times.</summary>
/// <param name="All">The time stamps by revision.</param>
internal sealed record ArchiveProofs(ImmutableArray<ArchiveTimeStampVerification> All)
{
    public static ArchiveProofs None { get; } = new([]);

    /// <summary>The earliest time that any of them proves; null when none does.</summary>
    public DateTimeOffset? Earliest => EarliestAfter(0);

    /// <summary>The same with one that is before all of these.</summary>
    public ArchiveProofs Before(ArchiveTimeStampVerification earlier) =>
        new(All.Insert(0, earlier));

    /// <summary>The earliest proven time at which a revision existed; null when none is shown.</summary>
    /// <param name="revision">Number of the revision, from 1.</param>
    public DateTimeOffset? EarliestAfter(int revision) =>
        All.Where(stamp => stamp.Revision > revision)
            .Select(static stamp => stamp.TimeStamp?.ProvenTime)
            .Min();
}
