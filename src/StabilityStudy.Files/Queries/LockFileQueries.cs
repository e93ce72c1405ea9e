using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about protocol.lock and the record.</summary>
public static class LockFileQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind UnreadableLock = Kinds.Add("unreadable-lock", Stop, "a value of protocol.lock cannot be read", "put the file back as the program wrote it");
    internal static readonly QueryKind LockChainBroken = Kinds.Add("lock-chain-broken", Stop, "a lock was taken away, added or changed", "put the file back as the program wrote it");
    internal static readonly QueryKind LockedCopyMissing = Kinds.Add("locked-copy-missing", Record, "the copy of a locked protocol is missing from the folder locked, or is another file", "put the copy back as the program wrote it");
    /// <summary>A line of the record does not follow the one before it.</summary>
    public static readonly QueryKind RecordChainBroken = Kinds.Add(
        "record-chain-broken",
        Record,
        "a line of record.jsonl was taken away, added or changed",
        "find out who changed the record; put it back from a copy, or say in a deviation what happened",
        StatedQuery.Words(_ => "A line of the record of the study does not follow the one before it: a line was taken away, added or changed.")
    );
    /// <summary>protocol.lock is not the one of the record.</summary>
    public static readonly QueryKind LockNotAsRecorded = Kinds.Add(
        "lock-not-as-recorded",
        Record,
        "protocol.lock is not the file that the record names",
        "put the file back as the program wrote it, or say in a deviation what happened",
        StatedQuery.Words(_ => "protocol.lock is not the file that the record of the study names: it was changed, or replaced.")
    );
    /// <summary>A lock that the record does not name.</summary>
    public static readonly QueryKind LockNotRecorded = Kinds.Add(
        "lock-not-recorded",
        Note,
        "there is a protocol.lock, and record.jsonl is missing, or was begun after a lock in it",
        "put record.jsonl back into the folder; where there never was one, say so in a deviation",
        StatedQuery.Words(_ => "There is a lock that no record of the study names: the record was left behind, begun later, or taken away.")
    );
    internal static readonly QueryKind SignedWithOtherFiles = Kinds.Add(
        "signed-with-other-files",
        Record,
        "a report of this study was signed, and its files have changed since",
        "say in a deviation what changed and why, and under [revision] which report this one replaces; withdraw the signed report where it no longer stands",
        query =>
            query.Values.Items is [var day, _, ..]
                ? query with
                {
                    Text =
                        $"A report of this study was signed on {day}, and of the files as a report names them these have changed since: {string.Join(", ", query.Values.Items.Skip(1))}.",
                }
                : null
    );
    internal static readonly QueryKind RevisionNotRecorded = Kinds.Add(
        "revision-not-recorded",
        Record,
        "[revision] of study.toml names a report that the record of the study does not name",
        "copy the digits after \"inputs\" at the foot of a page of the report that is replaced; where it was made in another folder, say so in a deviation",
        StatedQuery.Words(query => $"The revision replaces a report with the input digest {query.Observed}, and no report in the record of the study has that digest.")
    );
    // csharpier-ignore-end
}
