using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>
/// What a signature states for a program to read, beside its stamp for people: role, decision and the digest of the
/// inputs, as a JSON text inside the signed bytes.
/// </summary>
/// <param name="Role">Role of the signatory.</param>
/// <param name="Credentials">Credentials as printed; null when none are given.</param>
/// <param name="Decision">The decision; null for a signatory who does not decide.</param>
/// <param name="InputDigest">Digest of the study's inputs.</param>
public sealed record SignedStatement(
    string Role,
    string? Credentials,
    ApproverDecision? Decision,
    string InputDigest
)
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The statement as JSON.</summary>
    public string ToJson()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            json.WriteString("role", Role);
            json.WriteString("credentials", Credentials);
            json.WriteString("decision", Decision is { } decision ? WordOf(decision.Kind) : null);
            json.WriteString("decisionText", Decision?.Text);
            json.WriteString("inputDigest", InputDigest);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    /// <summary>Reads a statement; null when the text is none.</summary>
    public static SignedStatement? Read(string? text)
    {
        if (text is null)
        {
            return null;
        }

        try
        {
            using var document = JsonDocument.Parse(text);
            var root = document.RootElement;
            return
                root.GetProperty("role").GetString() is { } role
                && root.GetProperty("inputDigest").GetString() is { } digest
                ? new SignedStatement(
                    role,
                    root.GetProperty("credentials").GetString(),
                    ReadDecision(root),
                    digest
                )
                : null;
        }
        catch (Exception error)
            when (error is JsonException or InvalidOperationException or KeyNotFoundException)
        {
            return null;
        }
    }

    private static ApproverDecision? ReadDecision(JsonElement root) =>
        root.GetProperty("decision").GetString() switch
        {
            null => null,
            "approve" => new ApproverDecision(DecisionKind.Approve, Text(root)),
            "conditions" => new ApproverDecision(DecisionKind.Conditions, Text(root)),
            _ => new ApproverDecision(DecisionKind.Decline, Text(root)),
        };

    private static string? Text(JsonElement root) => root.GetProperty("decisionText").GetString();

    private static string WordOf(DecisionKind kind) =>
        kind switch
        {
            DecisionKind.Approve => "approve",
            DecisionKind.Conditions => "conditions",
            _ => "decline",
        };
}
