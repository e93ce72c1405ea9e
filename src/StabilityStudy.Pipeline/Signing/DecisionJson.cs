using System.Text.Json;
using System.Xml;
using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A decision as JSON in the statement of a signature: windows as durations of ISO 8601, days as in ISO 8601.</summary>
public static class DecisionJson
{
    private const string DayForm = "yyyy-MM-dd";
    private const string TimeForm = "yyyy-MM-ddTHH:mm:sszzz";

    /// <summary>Writes a decision as one object.</summary>
    public static void Write(Utf8JsonWriter json, ApproverDecision decision)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(decision);
        json.WriteStartObject();
        json.WriteString("kind", WordOf(decision.Kind));
        json.WriteString("reason", decision.Reason);
        json.WriteString("effective", Day(decision.Effective));
        json.WriteString("review", Day(decision.Review));
        Write(json, "conditions", decision.Conditions);
        json.WriteStartArray("windows");
        foreach (var window in decision.Windows)
        {
            Write(json, window);
        }

        json.WriteEndArray();
        json.WritePropertyName("earlier");
        if (decision.Earlier is { } earlier)
        {
            json.WriteStartObject();
            json.WriteString("at", earlier.At.ToString(TimeForm, CultureInfo.InvariantCulture));
            json.WriteString("by", earlier.By);
            json.WriteString("decision", earlier.Words);
            json.WriteString("reason", earlier.Reason);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNullValue();
        }

        json.WriteEndObject();
    }

    /// <summary>Reads a decision.</summary>
    /// <exception cref="FormatException">A value is not one that is written; what else can be wrong shows as other exceptions of the JSON reader.</exception>
    internal static ApproverDecision? Read(JsonElement json) =>
        json.ValueKind == JsonValueKind.Null
            ? null
            : new ApproverDecision(
                KindOf(json.GetProperty("kind").GetString()),
                json.GetProperty("reason").GetString()
            )
            {
                Effective = ReadDay(json.GetProperty("effective")),
                Review = ReadDay(json.GetProperty("review")),
                Conditions = Texts(json, "conditions"),
                Windows = [.. json.GetProperty("windows").EnumerateArray().Select(ReadWindow)],
                Earlier = ReadEarlier(json.GetProperty("earlier")),
            };

    /// <summary>The word of a kind in files.</summary>
    internal static string WordOf(DecisionKind kind) =>
        kind switch
        {
            DecisionKind.Approve => "approve",
            DecisionKind.Conditions => "conditions",
            DecisionKind.Decline => "decline",
        };

    /// <exception cref="FormatException">It is no kind.</exception>
    internal static DecisionKind KindOf(string? word) =>
        Enum.GetValues<DecisionKind>().Where(kind => WordOf(kind) == word).ToArray() is [var only]
            ? only
            : throw new FormatException($"There is no decision \"{word}\".");

    private static void Write(Utf8JsonWriter json, WindowDecision window)
    {
        json.WriteStartObject();
        json.WriteString("analyte", window.Row.Analyte);
        json.WriteString("group", window.Row.Group);
        json.WriteString("storage", window.Row.Storage);
        json.WriteBoolean("ofOneInstrument", window.Row.IsOfOneInstrument);
        Write(json, "instruments", window.Row.Instruments);
        Write(json, "reagents", window.Row.Reagents);
        Write(json, "sites", window.Row.Sites);
        json.WriteString("today", XmlConvert.ToString(window.Row.Today));
        json.WriteString("supported", Duration(window.Row.Supported));
        json.WriteString("approved", Duration(window.Approved));
        json.WriteString("interim", Duration(window.Interim));
        json.WriteStartArray("conditions");
        foreach (var number in window.Conditions)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, ImmutableArray<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static WindowDecision ReadWindow(JsonElement json) =>
        new(
            new ConcludedWindow(
                Text(json, "analyte"),
                Text(json, "group"),
                Text(json, "storage"),
                ReadDuration(json.GetProperty("supported")),
                ReadDuration(json.GetProperty("today")) ?? TimeSpan.Zero,
                Texts(json, "instruments"),
                Texts(json, "reagents"),
                Texts(json, "sites")
            )
            {
                IsOfOneInstrument = json.GetProperty("ofOneInstrument").GetBoolean(),
            },
            ReadDuration(json.GetProperty("approved")),
            ReadDuration(json.GetProperty("interim")),
            [.. json.GetProperty("conditions").EnumerateArray().Select(item => item.GetInt32())]
        );

    private static EarlierDecision? ReadEarlier(JsonElement json) =>
        json.ValueKind == JsonValueKind.Null
            ? null
            : new(
                json.GetProperty("at").GetDateTimeOffset(),
                Text(json, "by"),
                Text(json, "decision"),
                Text(json, "reason")
            );

    private static string Text(JsonElement json, string name) =>
        json.GetProperty(name).GetString() ?? "";

    private static ImmutableArray<string> Texts(JsonElement json, string name) =>
        [.. json.GetProperty(name).EnumerateArray().Select(item => item.GetString() ?? "")];

    private static string? Duration(TimeSpan? duration) =>
        duration is { } given ? XmlConvert.ToString(given) : null;

    /// <exception cref="OverflowException">The duration is longer than any.</exception>
    private static TimeSpan? ReadDuration(JsonElement json) =>
        json.GetString() is { } text ? XmlConvert.ToTimeSpan(text) : null;

    private static string? Day(DateOnly? day) =>
        day?.ToString(DayForm, CultureInfo.InvariantCulture);

    private static DateOnly? ReadDay(JsonElement json) =>
        json.GetString() is { } text
            ? DateOnly.ParseExact(text, DayForm, CultureInfo.InvariantCulture)
            : null;
}
