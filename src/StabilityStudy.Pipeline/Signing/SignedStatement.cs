using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>
/// What a signature states for a program to read, beside its stamp for people: role, decision and the digest of the
/// inputs, as a JSON text inside the signed bytes. Its form is a contract of its own, and every released one is kept.
/// </summary>
/// <param name="Role">Role of the signatory.</param>
/// <param name="Credentials">Credentials as printed; null when none are given.</param>
/// <param name="Decision">The decision; null for a signatory who does not decide.</param>
/// <param name="InputDigest">Digest of the study's inputs.</param>
/// <param name="ToolVersion">Version of the program that signed.</param>
/// <param name="AcceptedNotRecomputed">What that version could not compute again of a report of another version, and the signatory accepted; empty otherwise.</param>
public sealed record SignedStatement(
    string Role,
    string? Credentials,
    ApproverDecision? Decision,
    string InputDigest,
    string ToolVersion,
    ImmutableArray<string> AcceptedNotRecomputed
)
{
    /// <summary>The number of the form that is written now.</summary>
    public const int CurrentFormat = 2;

    /// <summary>The form of versions 0.2.0 and 0.3.0, whose decision is on all rows at once.</summary>
    internal const int FormatWithoutRows = 1;

    private static readonly JsonWriterOptions s_options = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The number of its form; a statement of version 0.1.0 has none.</summary>
    public int Format { get; init; } = CurrentFormat;

    /// <summary>SHA-256 of the last line of the study's record when it was signed, so that lines cut off since show; null where there was no record.</summary>
    public string? RecordSha256 { get; init; }

    /// <summary>The statement as JSON: one form only, so that what is read is what was written.</summary>
    public string ToJson()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            json.WriteNumber("format", Format);
            json.WriteString("role", Role);
            json.WriteString("credentials", Credentials);
            WriteDecision(json);
            json.WriteString("inputDigest", InputDigest);
            json.WriteString("toolVersion", ToolVersion);
            json.WriteStartArray("acceptedNotRecomputed");
            foreach (var accepted in AcceptedNotRecomputed)
            {
                json.WriteStringValue(accepted);
            }

            json.WriteEndArray();
            if (Format != FormatWithoutRows)
            {
                json.WriteString("record", RecordSha256);
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    /// <summary>Reads a statement.</summary>
    internal static StatementReading Read(string? text)
    {
        try
        {
            using var document = JsonDocument.Parse(text ?? "");
            var root = document.RootElement;
            var format = root.GetProperty("format").GetInt32();
            if (format > CurrentFormat)
            {
                return new StatementReading.OfLaterVersion();
            }

            if (format < FormatWithoutRows)
            {
                return new StatementReading.Malformed();
            }

            var statement = new SignedStatement(
                root.GetProperty("role").GetString() ?? "",
                root.GetProperty("credentials").GetString(),
                format == FormatWithoutRows
                    ? ReadWithoutRows(root)
                    : DecisionJson.Read(root.GetProperty("decision")),
                root.GetProperty("inputDigest").GetString() ?? "",
                root.GetProperty("toolVersion").GetString() ?? "",
                [
                    .. root.GetProperty("acceptedNotRecomputed")
                        .EnumerateArray()
                        .Select(item => item.GetString() ?? ""),
                ]
            )
            {
                Format = format,
                RecordSha256 =
                    format == FormatWithoutRows ? null : root.GetProperty("record").GetString(),
            };
            return statement.ToJson() == text
                ? new StatementReading.Read(statement)
                : new StatementReading.Malformed();
        }
        catch (Exception error)
            when (error
                    is JsonException
                        or InvalidOperationException
                        or KeyNotFoundException
                        or FormatException
                        or OverflowException
            )
        {
            return new StatementReading.Malformed();
        }
    }

    private void WriteDecision(Utf8JsonWriter json)
    {
        if (Format == FormatWithoutRows)
        {
            json.WriteString(
                "decision",
                Decision is { } whole ? DecisionJson.WordOf(whole.Kind) : null
            );
            json.WriteString("decisionText", Decision?.Reason);
            return;
        }

        json.WritePropertyName("decision");
        if (Decision is { } decision)
        {
            DecisionJson.Write(json, decision);
        }
        else
        {
            json.WriteNullValue();
        }
    }

    private static ApproverDecision? ReadWithoutRows(JsonElement root)
    {
        var text = root.GetProperty("decisionText").GetString();
        return root.GetProperty("decision").GetString() is { } word
            ? new ApproverDecision(DecisionJson.KindOf(word), text)
            : null;
    }
}

/// <summary>What came of reading the statement of a signature.</summary>
internal abstract record StatementReading
{
    private StatementReading() { }

    /// <summary>It was read.</summary>
    public sealed record Read(SignedStatement Statement) : StatementReading;

    /// <summary>A later version of the program wrote it.</summary>
    public sealed record OfLaterVersion : StatementReading;

    /// <summary>It is none that this program writes.</summary>
    public sealed record Malformed : StatementReading;
}
