using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Locking;

/// <summary>A lock with what proves it.</summary>
/// <param name="Lock">The lock.</param>
/// <param name="Previous">SHA-256 of the statement of the lock before it, lower-case hexadecimal; null for the first.</param>
/// <param name="Signature">CMS signature (detached, DER) over the statement; empty when there is none.</param>
/// <param name="TimeStamp">RFC 3161 time-stamp token (DER) over the statement; empty when there is none.</param>
public sealed record StoredLock(
    ProtocolLock Lock,
    string? Previous,
    ImmutableArray<byte> Signature,
    ImmutableArray<byte> TimeStamp
)
{
    /// <summary>
    /// What is signed and time-stamped: one line for each fact, each ended by a line feed, as UTF-8. It holds the hash of
    /// the statement before it, so that no earlier lock can be taken away or changed unseen.
    /// </summary>
    public ReadOnlyMemory<byte> Statement()
    {
        var text = new StringBuilder("protocol lock\n");
        text.Append(FormattableString.Invariant($"number {Lock.Number}\n"));
        text.Append(FormattableString.Invariant($"protocol_sha256 {Lock.ProtocolSha256}\n"));
        text.Append(FormattableString.Invariant($"at {LockFile.Time(Lock.At)}\n"));
        text.Append(FormattableString.Invariant($"by {Lock.By}\n"));
        if (Lock.Reason is { } reason)
        {
            text.Append(FormattableString.Invariant($"reason {reason}\n"));
        }

        if (Lock.LowChanceAccepted is { } accepted)
        {
            text.Append(FormattableString.Invariant($"low_chance_accepted {accepted}\n"));
        }

        if (Previous is { } previous)
        {
            text.Append(FormattableString.Invariant($"previous {previous}\n"));
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>SHA-256 of the statement, lower-case hexadecimal: what the next lock is bound to.</summary>
    public string StatementHash() => InputDigest.Sha256(Statement().Span);
}

/// <summary>Every lock of a protocol, the first one first.</summary>
public sealed record StoredLocks(ImmutableArray<StoredLock> All)
{
    /// <summary>A protocol that was never locked.</summary>
    public static StoredLocks None { get; } = new([]);

    /// <summary>What the next lock is bound to; null when there is none before it.</summary>
    public string? LastHash => All.IsEmpty ? null : All[^1].StatementHash();
}
