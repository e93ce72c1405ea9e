using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Files.Recording;

/// <summary>
/// The record of a study, record.jsonl: a JSON object a line, each with the SHA-256 of the line before it (its bytes
/// without the line feed). Lines are only ever added, so a line that was taken away, added or changed before the last one breaks the
/// chain. It does not show that its last lines were taken off, or that all of it was written anew: for that, keep a copy elsewhere.
/// </summary>
public static class StudyRecord
{
    /// <summary>Name of the file.</summary>
    public const string Name = "record.jsonl";

    private const byte LineFeed = (byte)'\n';

    private static readonly JsonWriterOptions s_options = new()
    {
        // Names of people stay readable; the file is never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The line that follows a record, with its line feed; before it comes one when the record ends without.</summary>
    /// <param name="record">The record so far; empty when there is none.</param>
    /// <param name="entry">What was done.</param>
    public static ReadOnlyMemory<byte> Next(ReadOnlyMemory<byte> record, RecordEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var lines = Lines(record);
        var buffer = new ArrayBufferWriter<byte>();
        if (!record.IsEmpty && record.Span[^1] != LineFeed)
        {
            buffer.Write([LineFeed]);
        }

        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            json.WriteNumber("number", lines.Length + 1);
            json.WriteString(
                "at",
                entry.At.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
            );
            json.WriteString("by", entry.By);
            json.WriteString("action", entry.Action);
            json.WriteString("tool", entry.Tool);
            Write(json, "inputs", entry.Inputs);
            Write(json, "outputs", entry.Outputs);
            if (entry.Seed is { } seed)
            {
                json.WriteNumber("seed", seed);
            }

            if (entry.Decision.Length > 0)
            {
                json.WriteString(RecordedDecision.Property, entry.Decision);
            }

            if (!entry.Look.IsEmpty)
            {
                LookRecord.Write(json, entry.DataSha256, entry.Look);
            }

            json.WriteString("previous", NewestSha256(record) ?? "");
            json.WriteEndObject();
        }

        buffer.Write([LineFeed]);
        return buffer.WrittenMemory;
    }

    /// <summary>SHA-256 of the last line; null where there is none.</summary>
    /// <param name="record">Content of the file.</param>
    public static string? NewestSha256(ReadOnlyMemory<byte> record) =>
        Lines(record) is [.., var last] ? InputDigest.Sha256(last.Span) : null;

    /// <summary>The record up to and with the line that has a hash, and how many lines follow it; null where no line has it.</summary>
    /// <param name="record">Content of the file.</param>
    /// <param name="sha256">SHA-256 of a line without its line feed.</param>
    public static (ReadOnlyMemory<byte> UpTo, int Number, int Following)? Until(
        ReadOnlyMemory<byte> record,
        string sha256
    )
    {
        var lines = Lines(record);
        var length = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            length += lines[i].Length;
            if (InputDigest.Sha256(lines[i].Span) == sha256)
            {
                return (record[..length], i + 1, lines.Length - i - 1);
            }

            length++;
        }

        return null;
    }

    /// <summary>SHA-256 of the line about a lock; null where the record has none.</summary>
    /// <param name="record">Content of the file.</param>
    /// <param name="number">Number of the lock.</param>
    public static string? LineOfLock(ReadOnlyMemory<byte> record, int number) =>
        Lines(record)
            .Where(line =>
                Read(line, root => FilesOf(root, "outputs"))?.ContainsKey(LockFile.Name) == true
            )
            .Skip(number - 1)
            .Select(line => InputDigest.Sha256(line.Span))
            .FirstOrDefault();

    /// <summary>Looks for lines that were taken away, added or changed, and for a lock that is not the recorded one or not recorded.</summary>
    /// <param name="record">Content of the file.</param>
    /// <param name="lockSha256">SHA-256 of protocol.lock; null when there is none.</param>
    /// <param name="locks">How many locks it holds: the record names the file after each.</param>
    /// <returns>A query for the first line that does not follow the one before it, and one for a lock that differs.</returns>
    public static ImmutableArray<DataQuery> Check(
        ReadOnlyMemory<byte> record,
        string? lockSha256,
        int locks = 1
    )
    {
        var queries = new QueryList();
        var lines = Lines(record);
        var (previous, recordedLock, recordedLocks) = ("", (string?)null, 0);
        for (var i = 0; i < lines.Length; i++)
        {
            if (Read(lines[i], i + 1, previous) is not { } outputs)
            {
                queries.AddOwn(
                    LockFileQueries.RecordChainBroken,
                    new QuerySource(Name, i + 1, null),
                    ""
                );
                return queries.ToImmutable();
            }

            previous = InputDigest.Sha256(lines[i].Span);
            if (outputs.TryGetValue(LockFile.Name, out var named))
            {
                (recordedLock, recordedLocks) = (named, recordedLocks + 1);
            }
        }

        if (recordedLock is not null && recordedLock != lockSha256)
        {
            queries.AddOwn(
                LockFileQueries.LockNotAsRecorded,
                new QuerySource(LockFile.Name, null, null),
                lockSha256 ?? ""
            );
        }

        if (lockSha256 is not null && recordedLocks < locks)
        {
            queries.AddOwn(
                LockFileQueries.LockNotRecorded,
                new QuerySource(LockFile.Name, null, null),
                ""
            );
        }

        return queries.ToImmutable();
    }

    /// <summary>The outputs that a line names; null when it does not follow the line before it.</summary>
    private static Dictionary<string, string>? Read(
        ReadOnlyMemory<byte> line,
        int number,
        string previous
    ) =>
        Read(
            line,
            // What the program writes into every line must be there, since it is read without doubt later.
            root =>
                root.GetProperty("number").GetInt32() == number
                && root.GetProperty("previous").GetString() == previous
                && root.GetProperty("at").TryGetDateTimeOffset(out _)
                && root.GetProperty("action").GetString() is not null
                && FilesOf(root, "inputs") is not null
                    ? FilesOf(root, "outputs")
                    : null
        );

    /// <summary>What a line says; null where it is written otherwise than the program writes it.</summary>
    internal static T? Read<T>(ReadOnlyMemory<byte> line, Func<JsonElement, T?> read)
        where T : class
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            return read(document.RootElement);
        }
        catch (Exception error)
            when (error
                    is JsonException
                        or InvalidOperationException
                        or KeyNotFoundException
                        or FormatException
                        or ArgumentException
            )
        {
            return null;
        }
    }

    /// <summary>The files that a line names, by name, with their SHA-256.</summary>
    internal static Dictionary<string, string> FilesOf(JsonElement line, string property) =>
        line.GetProperty(property)
            .EnumerateObject()
            .ToDictionary(item => item.Name, item => item.Value.GetString() ?? "");

    private static void Write(Utf8JsonWriter json, string name, ImmutableArray<FileHash> files)
    {
        json.WriteStartObject(name);
        foreach (var file in files)
        {
            json.WriteString(file.Name, file.Sha256);
        }

        json.WriteEndObject();
    }

    internal static ImmutableArray<ReadOnlyMemory<byte>> Lines(ReadOnlyMemory<byte> record)
    {
        var lines = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        var rest = record;
        while (!rest.IsEmpty)
        {
            var end = rest.Span.IndexOf(LineFeed);
            lines.Add(end < 0 ? rest : rest[..end]);
            rest = end < 0 ? default : rest[(end + 1)..];
        }

        return lines.ToImmutable();
    }
}
