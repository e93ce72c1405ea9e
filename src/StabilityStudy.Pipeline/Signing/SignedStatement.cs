using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>
/// What a signature states for a program to read, beside its stamp for people: role, decision and the digest of the
/// inputs, as a JSON text inside the signed bytes. Its form is a contract of its own.
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
    /// <summary>The number of the form; a statement of version 0.1.0 has none.</summary>
    public const int Format = 1;

    private static readonly JsonWriterOptions s_options = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

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
            json.WriteString("decision", Decision is { } decision ? WordOf(decision.Kind) : null);
            json.WriteString("decisionText", Decision?.Text);
            json.WriteString("inputDigest", InputDigest);
            json.WriteString("toolVersion", ToolVersion);
            json.WriteStartArray("acceptedNotRecomputed");
            foreach (var accepted in AcceptedNotRecomputed)
            {
                json.WriteStringValue(accepted);
            }

            json.WriteEndArray();
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
            if (root.GetProperty("format").GetInt32() > Format)
            {
                return new StatementReading.OfLaterVersion();
            }

            var statement = new SignedStatement(
                root.GetProperty("role").GetString() ?? "",
                root.GetProperty("credentials").GetString(),
                ReadDecision(root),
                root.GetProperty("inputDigest").GetString() ?? "",
                root.GetProperty("toolVersion").GetString() ?? "",
                [
                    .. root.GetProperty("acceptedNotRecomputed")
                        .EnumerateArray()
                        .Select(item => item.GetString() ?? ""),
                ]
            );
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
            )
        {
            return new StatementReading.Malformed();
        }
    }

    private static ApproverDecision? ReadDecision(JsonElement root)
    {
        var word = root.GetProperty("decision").GetString();
        var text = root.GetProperty("decisionText").GetString();
        return word is null
            ? null
            : new ApproverDecision(
                Enum.GetValues<DecisionKind>().Single(kind => WordOf(kind) == word),
                text
            );
    }

    private static string WordOf(DecisionKind kind) =>
        kind switch
        {
            DecisionKind.Approve => "approve",
            DecisionKind.Conditions => "conditions",
            DecisionKind.Decline => "decline",
        };
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
