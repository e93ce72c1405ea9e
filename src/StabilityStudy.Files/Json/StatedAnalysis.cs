using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Files.Json;

/// <summary>
/// The analysis.json of a report, of whatever version. Nothing in it is believed: it is held against the study analyzed
/// again. What cannot be had again from the inputs is taken from it, and the verification says so.
/// </summary>
/// <param name="Root">The whole document.</param>
/// <param name="Format">Number of its form.</param>
/// <param name="Rules">Number of the rules by which was concluded; 0 where none is stated.</param>
/// <param name="ToolVersion">Version of the program that wrote it.</param>
/// <param name="RawFiles">The laboratory's own files as they were read.</param>
/// <param name="OwnFileQueries">Data queries about those files and the record, which cannot be raised again.</param>
public sealed record StatedAnalysis(
    JsonElement Root,
    int Format,
    int Rules,
    string ToolVersion,
    ImmutableArray<FileHash> RawFiles,
    ImmutableArray<DataQuery> OwnFileQueries
)
{
    private static readonly JsonDocumentOptions s_strict = new()
    {
        AllowDuplicateProperties = false,
    };

    /// <summary>Reads an analysis.json.</summary>
    /// <param name="utf8">Its bytes.</param>
    /// <param name="stated">What it states.</param>
    /// <param name="fault">Why it is none, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> utf8,
        [NotNullWhen(true)] out StatedAnalysis? stated,
        [NotNullWhen(false)] out string? fault
    )
    {
        (stated, fault) = (null, null);
        if (!JsonSize.IsWithinBounds(utf8.Span))
        {
            fault =
                $"{AnalysisJson.FileName} in the file is larger than {StudyLimits.InWords(StudyLimits.AnalysisBytes)}, holds more values than any analysis, or is no JSON.";
            return false;
        }

        try
        {
            using var document = JsonDocument.Parse(utf8, s_strict);
            var root = document.RootElement.Clone();
            stated = new StatedAnalysis(
                root,
                root.GetProperty("format").GetInt32(),
                root.TryGetProperty("rules", out var rules) ? rules.GetInt32() : 0,
                Text(root, "toolVersion"),
                [
                    .. root.GetProperty("identity")
                        .GetProperty("rawFiles")
                        .EnumerateArray()
                        .Select(file => new FileHash(Text(file, "name"), Text(file, "sha256"))),
                ],
                [
                    .. root.GetProperty("queries")
                        .EnumerateArray()
                        .Select(StatedQuery.Restore)
                        .OfType<DataQuery>(),
                ]
            );
            return true;
        }
        catch (Exception exception)
            when (exception
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
            )
        {
            fault =
                $"The attached {AnalysisJson.FileName} is not an analysis as this program writes it.";
            return false;
        }
    }

    /// <summary>
    /// Whether the bytes are what the program writes of the same study, but for the last digits of numbers: same order,
    /// spacing and escapes, and every number in its shortest form.
    /// </summary>
    /// <param name="stated">The analysis.json of a report.</param>
    /// <param name="computed">The same as it was computed again.</param>
    public static bool IsWrittenAs(ReadOnlyMemory<byte> stated, ReadOnlyMemory<byte> computed)
    {
        if (stated.Span.SequenceEqual(computed.Span))
        {
            return true;
        }

        using var one = JsonDocument.Parse(stated);
        using var two = JsonDocument.Parse(computed);
        return stated.Span.SequenceEqual(Rewritten(one.RootElement, withNumbers: true))
            && Rewritten(one.RootElement, withNumbers: false)
                .AsSpan()
                .SequenceEqual(Rewritten(two.RootElement, withNumbers: false));
    }

    private static byte[] Rewritten(JsonElement element, bool withNumbers) =>
        AnalysisJson.Write(json => Rewrite(json, element, withNumbers));

    private static void Rewrite(Utf8JsonWriter json, JsonElement element, bool withNumbers)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                json.WriteStartObject();
                foreach (var property in element.EnumerateObject())
                {
                    json.WritePropertyName(property.Name);
                    Rewrite(json, property.Value, withNumbers);
                }

                json.WriteEndObject();
                break;
            case JsonValueKind.Array:
                json.WriteStartArray();
                foreach (var entry in element.EnumerateArray())
                {
                    Rewrite(json, entry, withNumbers);
                }

                json.WriteEndArray();
                break;
            case JsonValueKind.Number when !withNumbers:
                json.WriteNumberValue(0);
                break;
            case JsonValueKind.Number when element.TryGetUInt64(out var count):
                json.WriteNumberValue(count);
                break;
            case JsonValueKind.Number:
                json.WriteNumberValue(element.GetDouble());
                break;
            case JsonValueKind.String:
                json.WriteStringValue(element.GetString());
                break;
            case JsonValueKind.True:
            case JsonValueKind.False:
            case JsonValueKind.Null:
            case JsonValueKind.Undefined:
                element.WriteTo(json);
                break;
        }
    }

    private static string Text(JsonElement element, string property) =>
        element.GetProperty(property).GetString()
        ?? throw new InvalidOperationException($"{property} is null.");
}
