using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Unicode;
using StabilityStudy.Core.Looks;
using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Recording;

/// <summary>The looks in the record of a study: each line that showed figures for the first time says of which data.</summary>
public static class LookRecord
{
    private const string Property = "look";

    /// <summary>Whether the record holds a look at these data.</summary>
    /// <param name="record">Content of record.jsonl.</param>
    /// <param name="dataSha256">Fingerprint of the data.</param>
    public static bool Holds(ReadOnlyMemory<byte> record, string dataSha256) =>
        All(record, readsPairs: false).Any(look => look.DataSha256 == dataSha256);

    /// <summary>
    /// The looks at other data before the first look at these, so that looking again at the same data changes nothing. A
    /// line that cannot be read is passed over; that the chain of the record is broken is a query of its own.
    /// </summary>
    /// <param name="record">Content of record.jsonl.</param>
    /// <param name="dataSha256">Fingerprint of the data at hand.</param>
    internal static ImmutableArray<EarlierLook> Before(
        ReadOnlyMemory<byte> record,
        string dataSha256
    )
    {
        var count = All(record, readsPairs: false)
            .TakeWhile(look => look.DataSha256 != dataSha256)
            .Count();
        return count == 0 ? [] : [.. All(record).Take(count)];
    }

    /// <summary>Every look, those of the record that are not known already after the known ones.</summary>
    /// <param name="record">Content of record.jsonl.</param>
    /// <param name="known">Looks that are known from elsewhere.</param>
    public static ImmutableArray<EarlierLook> All(
        ReadOnlyMemory<byte> record,
        ImmutableArray<EarlierLook> known
    ) => Joined(known, All(record));

    /// <summary>Looks after those that are known already.</summary>
    internal static ImmutableArray<EarlierLook> Joined(
        ImmutableArray<EarlierLook> known,
        IEnumerable<EarlierLook> more
    ) =>
        known.AddRange(
            more.Where(look =>
                !known.Any(one => (one.DataSha256, one.At) == (look.DataSha256, look.At))
            )
        );

    /// <summary>Writes a look into a line.</summary>
    internal static void Write(
        Utf8JsonWriter json,
        string dataSha256,
        ImmutableArray<LookedAtCell> cells
    )
    {
        json.WriteStartObject(Property);
        json.WriteString("data", dataSha256);
        json.WriteStartArray("cells");
        foreach (var cell in cells)
        {
            json.WriteStartObject();
            json.WriteString("analyte", cell.Key.Analyte);
            json.WriteString("group", cell.Key.Group);
            json.WriteString("storage", cell.Key.Storage);
            json.WriteString("timePoint", cell.Key.TimePoint.ToString());
            json.WriteNumber("planned", cell.Planned);
            json.WriteNumber("usable", cell.Usable);
            json.WriteString("collection", FileWords.CollectionStates.Write(cell.State));
            json.WriteNumber("counted", cell.Counted);
            json.WriteString("conclusion", FileWords.Conclusions.Write(cell.Conclusion));
            json.WriteString("pairs", LookRow.Written(cell.Pairs));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The pairs of many specimens are the most of a record, and which data were looked at is known without them.
    private static IEnumerable<EarlierLook> All(ReadOnlyMemory<byte> record, bool readsPairs = true)
    {
        var number = 0;
        foreach (var line in StudyRecord.Lines(record))
        {
            if (Read(line, number + 1, readsPairs) is { } look)
            {
                number++;
                yield return look;
            }
        }
    }

    private static EarlierLook? Read(ReadOnlyMemory<byte> line, int number, bool readsPairs) =>
        StudyRecord.Read(
            line,
            root =>
                root.TryGetProperty(Property, out var look)
                    ? new EarlierLook(
                        number,
                        root.GetProperty("at").GetDateTimeOffset(),
                        Text(root, "action"),
                        Text(look, "data"),
                        [
                            .. look.GetProperty("cells")
                                .EnumerateArray()
                                .Select(cell => Cell(cell, readsPairs))
                                .OfType<LookedAtCell>(),
                        ]
                    )
                    : null
        );

    private static LookedAtCell? Cell(JsonElement cell, bool readsPairs) =>
        LookRow.KeyOf(
            Text(cell, "analyte"),
            Text(cell, "group"),
            Text(cell, "storage"),
            Text(cell, "timePoint")
        )
            is { } key
        && FileWords.CollectionStates.TryRead(Text(cell, "collection"), out var state)
        && FileWords.Conclusions.TryRead(Text(cell, "conclusion"), out var conclusion)
            ? new(
                key,
                cell.GetProperty("planned").GetInt32(),
                cell.GetProperty("usable").GetInt32(),
                state.Value,
                cell.GetProperty("counted").GetInt32(),
                conclusion.Value,
                Pairs(cell.GetProperty("pairs"), readsPairs)
            )
            : null;

    // Whether they are a text is asked in any case, so that the same lines are passed over.
    private static ImmutableArray<LookedAtPair> Pairs(JsonElement words, bool areRead)
    {
        if (!areRead && IsPlain(words))
        {
            return [];
        }

        var text = words.GetString() ?? "";
        return areRead ? [.. LookRow.PairsOf(text)] : [];
    }

    /// <summary>Whether a value is a text without anything that might not be one, which is seen without making it.</summary>
    private static bool IsPlain(JsonElement value) =>
        value.ValueKind == JsonValueKind.String
        && JsonMarshal.GetRawUtf8Value(value) is var raw
        && !raw.Contains((byte)'\\')
        && Utf8.IsValid(raw);

    private static string Text(JsonElement element, string name) =>
        element.GetProperty(name).GetString() ?? "";
}
