namespace StabilityStudy.Core.Locking;

/// <summary>Whether the criteria came before the data, and how well that is shown.</summary>
/// <param name="Standing">What the locks say about the protocol that the study was analyzed by.</param>
/// <param name="Level">How well the lock of this protocol is shown; not locked where the protocol is another one.</param>
/// <param name="FirstCollection">Time of the first collection; null in a study without specimens.</param>
/// <param name="Locks">Every lock, the first one first.</param>
public sealed record LockEvidence(
    LockStanding Standing,
    LockLevel Level,
    DateTimeOffset? FirstCollection,
    ImmutableArray<ProtocolLock> Locks
)
{
    /// <summary>Judges the locks of a study.</summary>
    /// <param name="locks">The locks, the first one first.</param>
    /// <param name="protocolSha256">SHA-256 of the protocol that the study is analyzed by.</param>
    /// <param name="tubes">The tubes, whose collection the lock must precede.</param>
    public static LockEvidence Of(
        ImmutableArray<ProtocolLock> locks,
        string protocolSha256,
        ImmutableArray<TubeRow> tubes
    )
    {
        DateTimeOffset? first = tubes.IsEmpty ? null : tubes.Min(tube => tube.CollectedAt);
        var standing =
            locks.IsEmpty ? LockStanding.NotLocked
            : locks[^1].ProtocolSha256 != protocolSha256 ? LockStanding.ProtocolChanged
            : locks.Any(item => item.Level == LockLevel.Contradicted) ? LockStanding.Contradicted
            : IsOutOfOrder(locks) ? LockStanding.OutOfOrder
            : RulesLockedLast(locks).Latest >= first ? LockStanding.AfterFirstCollection
            : LockStanding.BeforeFirstCollection;
        return new LockEvidence(
            standing,
            standing is LockStanding.NotLocked or LockStanding.ProtocolChanged
                ? LockLevel.NotLocked
                : LevelOf(RulesLockedLast(locks), first),
            first,
            locks
        );
    }

    /// <summary>The approval of the criteria by signature, whenever that was; null without one.</summary>
    public ProtocolApproval? Approval =>
        Standing is LockStanding.NotLocked or LockStanding.ProtocolChanged
            ? null
            : RulesLockedLast(Locks).Approval;

    /// <summary>Whether the approval, if there is one, came before the first collection.</summary>
    public bool IsApprovedInTime => IsInTime(Approval, FirstCollection);

    private static LockLevel LevelOf(ProtocolLock rules, DateTimeOffset? first) =>
        rules.Level == LockLevel.Contradicted || !IsInTime(rules.Approval, first) ? rules.Level
        : (rules.Approval?.StampedAt ?? rules.StampedAt) is null ? LockLevel.ByApprover
        : LockLevel.ByApproverAndTimeStamp;

    private static bool IsInTime(ProtocolApproval? approval, DateTimeOffset? first) =>
        approval is not null && !(approval.Latest >= first);

    /// <summary>Whether a lock states a time before that of the one it amends.</summary>
    private static bool IsOutOfOrder(ImmutableArray<ProtocolLock> locks) =>
        locks.Zip(locks.Skip(1)).Any(pair => pair.Second.Latest < pair.First.Latest);

    /// <summary>The lock since which no rule was changed: an amendment of planned numbers alone leaves the criteria where they were.</summary>
    public static ProtocolLock RulesLockedLast(ImmutableArray<ProtocolLock> locks)
    {
        var last = locks.Length - 1;
        while (last > 0 && locks[last].KeepsRules)
        {
            last--;
        }

        return locks[last];
    }
}

/// <summary>What the locks say about the protocol that a study was analyzed by. The zero member is the cautious answer.</summary>
public enum LockStanding
{
    /// <summary>It was never locked.</summary>
    NotLocked,

    /// <summary>Another protocol was locked than the one at hand.</summary>
    ProtocolChanged,

    /// <summary>A signature or time stamp of a lock does not fit it.</summary>
    Contradicted,

    /// <summary>A lock states a time before that of the lock it amends.</summary>
    OutOfOrder,

    /// <summary>It was locked, or amended, when specimens had already been collected.</summary>
    AfterFirstCollection,

    /// <summary>It was locked before the first specimen was collected.</summary>
    BeforeFirstCollection,
}
