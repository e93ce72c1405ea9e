using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about protocol.lock and the record.</summary>
public static class LockFileQueries
{
    /// <summary>A value of the lock cannot be read.</summary>
    public static readonly QueryKind UnreadableLock = new(
        "unreadable-lock",
        Stop,
        "a value of protocol.lock cannot be read",
        "put the file back as the program wrote it"
    );

    /// <summary>A lock does not follow the one before it.</summary>
    public static readonly QueryKind LockChainBroken = new(
        "lock-chain-broken",
        Stop,
        "a lock was taken away, added or changed",
        "put the file back as the program wrote it"
    );

    /// <summary>A line of the record does not follow the one before it.</summary>
    public static readonly QueryKind RecordChainBroken = new(
        "record-chain-broken",
        Record,
        "a line of record.jsonl was taken away, added or changed",
        "find out who changed the record; put it back from a copy, or say in a deviation what happened"
    );

    /// <summary>protocol.lock is not the one of the record.</summary>
    public static readonly QueryKind LockNotAsRecorded = new(
        "lock-not-as-recorded",
        Record,
        "protocol.lock is not the file that the record names",
        "put the file back as the program wrote it, or say in a deviation what happened"
    );

    /// <summary>No line of the record names a lock.</summary>
    public static readonly QueryKind LockNotRecorded = new(
        "lock-not-recorded",
        Note,
        "there is a protocol.lock, and record.jsonl is missing or names none",
        "put record.jsonl back into the folder; where there never was one, say so in a deviation"
    );

    /// <summary>The report signed last was made from other files.</summary>
    public static readonly QueryKind SignedWithOtherFiles = new(
        "signed-with-other-files",
        Record,
        "a report of this study was signed, and its files have changed since",
        "say in a deviation what changed and why; withdraw the signed report where it no longer stands"
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        UnreadableLock,
        LockChainBroken,
        RecordChainBroken,
        LockNotAsRecorded,
        LockNotRecorded,
        SignedWithOtherFiles,
    ];
}
