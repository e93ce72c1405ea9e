using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Locking;

/// <summary>The protocols behind the locks: the copies that are at hand and are the locked ones, byte for byte.</summary>
public static class LockedProtocols
{
    private const string Protocol = "protocol.toml";
    private const string StoredPrefix = "locked-";

    /// <summary>Name under which a copy is read and attached to a report: "locked-1.toml", a name without a folder.</summary>
    public static string StoredName(int number) =>
        FormattableString.Invariant($"{StoredPrefix}{number}.toml");

    /// <summary>Name under which the signed protocol document of a lock is read and attached to a report: "locked-1.pdf".</summary>
    public static string StoredDocumentName(int number) =>
        FormattableString.Invariant($"{StoredPrefix}{number}.pdf");

    /// <summary>Whether a name is that of such a copy.</summary>
    internal static bool IsStoredName(string name) =>
        name.StartsWith(StoredPrefix, StringComparison.Ordinal)
        && name.EndsWith(".toml", StringComparison.Ordinal);

    /// <summary>What the protocol at hand changes against a lock; null where the copy of that lock is not at hand.</summary>
    public static ImmutableArray<ProtocolDifference>? Against(
        ProtocolLock before,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(files);
        return BytesOf(before, files) is { } copy && files.TryGetValue(Protocol, out var current)
            ? Between(copy, current)
            : null;
    }

    /// <summary>What one protocol changes against another; null where one cannot be read.</summary>
    public static ImmutableArray<ProtocolDifference>? Between(
        ReadOnlyMemory<byte> before,
        ReadOnlyMemory<byte> after
    ) =>
        TomlDocument.Read(before, LockFile.Name, new QueryList()) is { } old
        && TomlDocument.Read(after, LockFile.Name, new QueryList()) is { } now
            ? ProtocolDifferences.Between(old, now)
            : null;

    /// <summary>The protocol of a lock; null where it is not at hand as it was locked.</summary>
    public static StudyProtocol? Read(
        ProtocolLock item,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    )
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(files);
        return
            BytesOf(item, files) is { } bytes
            && ProtocolReader.Read(bytes, LockFile.Name).TryGet(out var protocol)
            ? protocol
            : null;
    }

    /// <summary>The locks with their protocols and what each changed, and a query where a copy is missing.</summary>
    internal static ImmutableArray<ProtocolLock> Of(
        ImmutableArray<StoredLock> stored,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files,
        QueryList queries
    )
    {
        var result = ImmutableArray.CreateBuilder<ProtocolLock>();
        TomlEntries? before = null;
        foreach (var item in stored)
        {
            var bytes = BytesOf(item.Lock, files);
            if (bytes is null && stored.Length > 1)
            {
                queries.Add(
                    LockFileQueries.LockedCopyMissing,
                    new QuerySource(LockFile.CopyName(item.Lock.Number), null, null),
                    "",
                    FormattableString.Invariant(
                        $"The copy of lock {item.Lock.Number} is not at hand, or is not the protocol that was locked: what was amended cannot be shown."
                    )
                );
            }

            var entries = bytes is { } known
                ? TomlDocument.Read(known, LockFile.Name, new QueryList())
                : null;
            result.Add(
                item.Lock with
                {
                    Protocol = Read(item.Lock, files),
                    Differences =
                        before is not null && entries is not null
                            ? ProtocolDifferences.Between(before, entries)
                            : null,
                }
            );
            before = entries;
        }

        return result.ToImmutable();
    }

    /// <summary>The names of the copies that are used beside the protocol itself, and of the signed protocol documents.</summary>
    internal static IEnumerable<string> NamesIn(
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files,
        ImmutableArray<ProtocolLock> locks
    ) =>
        [
            .. locks
                .Where(item => !IsCurrent(item, files) && BytesOf(item, files) is not null)
                .Select(item => StoredName(item.Number)),
            .. locks.Select(item => StoredDocumentName(item.Number)).Where(files.ContainsKey),
        ];

    /// <summary>The locks whose protocol is not at hand, or not as it was locked.</summary>
    public static ImmutableArray<ProtocolLock> Missing(
        ImmutableArray<ProtocolLock> locks,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    ) => [.. locks.Where(item => BytesOf(item, files) is null)];

    /// <summary>The names of copies at hand that are not the protocol of their lock, byte for byte, or are of no lock.</summary>
    public static ImmutableArray<string> NotLocked(
        ImmutableArray<ProtocolLock> locks,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    )
    {
        ArgumentNullException.ThrowIfNull(files);
        var hashes = locks.ToDictionary(
            item => StoredName(item.Number),
            item => item.ProtocolSha256
        );
        return
        [
            .. files
                .Where(file =>
                    IsStoredName(file.Key)
                    && hashes.GetValueOrDefault(file.Key) != InputDigest.Sha256(file.Value.Span)
                )
                .Select(file => file.Key),
        ];
    }

    /// <summary>The protocol of a lock, byte for byte; null where it is not at hand.</summary>
    public static ReadOnlyMemory<byte>? BytesOf(
        ProtocolLock item,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    )
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(files);
        var name = IsCurrent(item, files) ? Protocol : StoredName(item.Number);
        if (
            files.TryGetValue(name, out var bytes)
            && InputDigest.Sha256(bytes.Span) == item.ProtocolSha256
        )
        {
            return bytes;
        }

        return null;
    }

    private static bool IsCurrent(
        ProtocolLock item,
        ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files
    ) =>
        files.TryGetValue(Protocol, out var protocol)
        && InputDigest.Sha256(protocol.Span) == item.ProtocolSha256;
}
