using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Locking;

/// <summary>Reads and writes protocol.lock: every lock of the protocol, each bound to the one before it.</summary>
public static class LockFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "protocol.lock";

    private const int Format = 1;
    internal const string TimeFormat = "yyyy-MM-ddTHH:mm:sszzz";

    /// <summary>Name of the copy of a locked protocol: "locked/1.toml".</summary>
    public static string CopyName(int number) =>
        FormattableString.Invariant($"locked/{number}.toml");

    /// <summary>Name of the signed protocol document of a lock: "locked/1.pdf".</summary>
    public static string DocumentName(int number) =>
        FormattableString.Invariant($"locked/{number}.pdf");

    /// <summary>A time as the file writes it, with its offset.</summary>
    public static string Time(DateTimeOffset time) =>
        time.ToString(TimeFormat, CultureInfo.InvariantCulture);

    /// <summary>Reads the locks.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <returns>The locks, or the queries that stop.</returns>
    public static Outcome<StoredLocks> Read(ReadOnlyMemory<byte> utf8)
    {
        var queries = new QueryList();
        var locks = Read(utf8, queries);
        return queries.StopCount > 0
            ? Outcome.Stopped<StoredLocks>(queries.ToImmutable())
            : Outcome.Of(new StoredLocks(locks), queries.ToImmutable());
    }

    /// <summary>The file with one lock more.</summary>
    /// <param name="locks">The locks so far.</param>
    /// <param name="added">The lock to add; its number and the hash before it must follow from those.</param>
    /// <exception cref="ArgumentException">The lock does not follow the others.</exception>
    public static ReadOnlyMemory<byte> With(StoredLocks locks, StoredLock added)
    {
        ArgumentNullException.ThrowIfNull(locks);
        ArgumentNullException.ThrowIfNull(added);
        if (added.Lock.Number != locks.All.Length + 1 || added.Previous != locks.LastHash)
        {
            throw new ArgumentException("The lock does not follow the others.", nameof(added));
        }

        var text = new StringBuilder();
        text.Append(
            "# Made by \"stability-study lock\". Do not edit: each lock is bound to the one before it.\n"
        );
        text.Append(CultureInfo.InvariantCulture, $"format = {Format}\n");
        foreach (var item in locks.All.Add(added))
        {
            Append(text, item);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    internal static ImmutableArray<StoredLock> Read(ReadOnlyMemory<byte> utf8, QueryList queries)
    {
        if (TomlDocument.Read(utf8, Name, queries) is not { } entries)
        {
            return [];
        }

        var root = TomlTable.Root(entries, LockKeys.Root, Name, queries);
        FormatNumber.Check(root, LockKeys.Format, Format);
        var locks = ImmutableArray.CreateBuilder<StoredLock>();
        foreach (var table in root.Tables(LockKeys.Locks))
        {
            var stored = ReadLock(table);
            var follows = locks.Count == 0 ? null : locks[^1].StatementHash();
            if (stored.Lock.Number != locks.Count + 1 || stored.Previous != follows)
            {
                table.Fault(
                    LockKeys.Number,
                    LockFileQueries.LockChainBroken,
                    FormattableString.Invariant($"{stored.Lock.Number}"),
                    "The lock does not follow the one before it: a lock was taken away, added or changed.",
                    "Put the file back as the program wrote it. If it is lost, say so in a deviation and lock the protocol again."
                );
            }

            locks.Add(stored);
        }

        return locks.ToImmutable();
    }

    private static StoredLock ReadLock(TomlTable table) =>
        new(
            new ProtocolLock(
                table.Read(LockKeys.Number),
                table.Read(LockKeys.ProtocolSha256),
                table.Read(LockKeys.At),
                table.Read(LockKeys.By),
                table.Read(LockKeys.Reason)
            )
            {
                LowChanceAccepted = table.Read(LockKeys.LowChanceAccepted),
            },
            table.Read(LockKeys.Previous),
            table.Read(LockKeys.Signature),
            table.Read(LockKeys.TimeStamp)
        );

    private static void Append(StringBuilder text, StoredLock stored)
    {
        text.Append("\n[[lock]]\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"{LockKeys.Number.Name} = {stored.Lock.Number}\n"
        );
        Line(LockKeys.ProtocolSha256, stored.Lock.ProtocolSha256);
        Line(LockKeys.At, Time(stored.Lock.At));
        Line(LockKeys.By, stored.Lock.By);
        Line(LockKeys.Reason, stored.Lock.Reason);
        Line(LockKeys.LowChanceAccepted, stored.Lock.LowChanceAccepted);
        Line(LockKeys.Previous, stored.Previous);
        Line(LockKeys.Signature, Base64(stored.Signature));
        Line(LockKeys.TimeStamp, Base64(stored.TimeStamp));

        void Line(Key key, string? value)
        {
            if (value is not null)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{key.Name} = {TomlLiteral.Quoted(value)}\n"
                );
            }
        }
    }

    private static string? Base64(ImmutableArray<byte> bytes) =>
        bytes.IsEmpty ? null : Convert.ToBase64String(bytes.AsSpan());
}
