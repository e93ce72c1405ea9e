using System.Text.Encodings.Web;
using System.Text.Json;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes a verification for a program to read.</summary>
internal static class VerificationJson
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(Terminal terminal, ReportVerification found)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            json.WriteString("outcome", Word(found.Outcome));
            json.WriteString("document", found.IsProtocol ? "protocol" : "report");
            json.WriteString("study", found.StudyCode);
            json.WriteString(
                found.IsProtocol ? "protocolSha256" : "inputDigest",
                found.InputDigest
            );
            Write(json, "conclusions", found.Conclusions);
            json.WriteString("signatureIndication", found.Indication);
            WriteDecision(json, found.Decision);
            json.WriteStartArray("parts");
            foreach (var part in found.Parts)
            {
                json.WriteStartObject();
                json.WriteString("question", part.Question);
                json.WriteString("outcome", Word(part.Outcome));
                Write(json, "found", part.Sentences);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        terminal.WriteJson(buffer.ToArray());
    }

    private static void WriteDecision(Utf8JsonWriter json, SignedDecision? signed)
    {
        json.WritePropertyName("decision");
        if (signed is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteString("by", signed.By);
        json.WriteString("meaning", signed.Meaning);
        json.WriteString(
            "at",
            signed.At?.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
        );
        json.WritePropertyName("stated");
        DecisionJson.Write(json, signed.Decision);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static string Word(PartOutcome outcome) =>
        outcome switch
        {
            PartOutcome.Holds => "holds",
            PartOutcome.NotChecked => "not-checked",
            PartOutcome.Fails => "fails",
        };
}
