using System.Buffers.Text;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Json.Forms;

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
    /// spacing and escapes, and every number as the program writes it.
    /// </summary>
    /// <param name="stated">The analysis.json of a report.</param>
    /// <param name="computed">The same as it was computed again.</param>
    public static bool IsWrittenAs(ReadOnlyMemory<byte> stated, ReadOnlyMemory<byte> computed)
    {
        var one = new Utf8JsonReader(stated.Span);
        var two = new Utf8JsonReader(computed.Span);
        while (true)
        {
            var (fromOne, fromTwo) = ((int)one.BytesConsumed, (int)two.BytesConsumed);
            var isMore = one.Read();
            if (two.Read() != isMore || one.TokenType != two.TokenType)
            {
                return false;
            }

            if (!isMore)
            {
                return stated.Span[fromOne..].SequenceEqual(computed.Span[fromTwo..]);
            }

            var isNumber = one.TokenType == JsonTokenType.Number;
            // What stands before a token, and the token with what belongs to it, but for the digits of a number.
            var (toOne, toTwo) = isNumber
                ? ((int)one.TokenStartIndex, (int)two.TokenStartIndex)
                : ((int)one.BytesConsumed, (int)two.BytesConsumed);
            if (
                !stated.Span[fromOne..toOne].SequenceEqual(computed.Span[fromTwo..toTwo])
                || (isNumber && !IsAsWritten(ref one))
            )
            {
                return false;
            }
        }
    }

    private static bool IsAsWritten(ref Utf8JsonReader number)
    {
        Span<byte> written = stackalloc byte[32];
        return (
                number.TryGetUInt64(out var count)
                    ? Utf8Formatter.TryFormat(count, written, out var length)
                    : Utf8Formatter.TryFormat(
                        NumberForm.Rounded(number.GetDouble()),
                        written,
                        out length
                    )
            ) && number.ValueSpan.SequenceEqual(written[..length]);
    }

    private static string Text(JsonElement element, string property) =>
        element.GetProperty(property).GetString()
        ?? throw new InvalidOperationException($"{property} is null.");
}
