namespace StabilityStudy.Core.Locking;

/// <summary>One locking of the protocol: which bytes were fixed, when and by whom.</summary>
/// <param name="Number">1 for the first; each amendment adds one.</param>
/// <param name="ProtocolSha256">SHA-256 of protocol.toml as it was locked, lower-case hexadecimal.</param>
/// <param name="At">When, with the offset of the clock that says so.</param>
/// <param name="By">Who locked it.</param>
/// <param name="Reason">Why the protocol was amended; null for the first lock.</param>
public sealed record ProtocolLock(
    int Number,
    string ProtocolSha256,
    DateTimeOffset At,
    string By,
    string? Reason
)
{
    /// <summary>Why the protocol was locked although some of its time points will hardly be supported; null where none is so, or where nobody asked.</summary>
    public string? LowChanceAccepted { get; init; }

    /// <summary>How well the time is shown. What a file claims is this computer's clock only, until a signature or time stamp has been checked.</summary>
    public LockLevel Level { get; init; } = LockLevel.ThisComputersClock;

    /// <summary>The time that an authority has stamped; null where no time stamp was found right.</summary>
    public DateTimeOffset? StampedAt { get; init; }

    /// <summary>The protocol as it was locked; null where its copy is not at hand.</summary>
    public StudyProtocol? Protocol { get; init; }

    /// <summary>What it changed against the lock before it; null for the first, and where a copy is not at hand.</summary>
    public ImmutableArray<ProtocolDifference>? Differences { get; init; }

    /// <summary>Whether it is known to change no rule, only planned numbers and labels.</summary>
    public bool KeepsRules =>
        Differences is { } differences && differences.All(item => item.Kind != DifferenceKind.Rule);

    /// <summary>The approval of this protocol by signature, whenever that was; null without a protocol document that everybody in it has signed.</summary>
    public ProtocolApproval? Approval { get; init; }

    /// <summary>The latest time at which the protocol may have been locked: a stamp later than the stated time counts.</summary>
    internal DateTimeOffset Latest => StampedAt > At ? StampedAt.Value : At;
}

/// <summary>How well it is shown when a protocol was locked. The zero member is the cautious answer.</summary>
public enum LockLevel
{
    /// <summary>Not locked: nothing shows it.</summary>
    NotLocked,

    /// <summary>Locked by this computer's clock only, which proves little.</summary>
    ThisComputersClock,

    /// <summary>Locked with a signature.</summary>
    BySignature,

    /// <summary>Locked with a time stamp of an independent authority.</summary>
    ByTimeStamp,

    /// <summary>A signature, time stamp or signed protocol document is there and is not right, or is of another time: worse than none.</summary>
    Contradicted,

    /// <summary>Locked, and its criteria approved before the first collection by a signature on the protocol document, at a time that the signer states.</summary>
    ByApprover,

    /// <summary>The same with a time stamp of an independent authority.</summary>
    ByApproverAndTimeStamp,
}
