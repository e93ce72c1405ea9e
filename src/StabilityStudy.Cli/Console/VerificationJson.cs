using System.Text.Json;
using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes a verification for a program to read.</summary>
internal static class VerificationJson
{
    public static void Write(Terminal terminal, ReportVerification found)
    {
        terminal.WriteJson(json =>
        {
            json.WriteString("outcome", Word(found.Outcome));
            json.WriteString("document", Word(found.Document));
            json.WriteString("study", found.StudyCode);
            json.WriteString(
                found.Document switch
                {
                    DocumentKind.Report => "inputDigest",
                    DocumentKind.Protocol => "protocolSha256",
                    DocumentKind.Notice => "noticeSha256",
                },
                found.InputDigest
            );
            json.WriteTexts("conclusions", found.Conclusions);
            json.WriteString("signatureIndication", found.Indication);
            WriteDecision(json, found.Decision);
            WriteParts(json, found.Parts);
        });
    }

    /// <summary>What was found about an inspection folder.</summary>
    public static void Write(Terminal terminal, InspectionVerification found) =>
        terminal.WriteJson(json =>
        {
            json.WriteString("outcome", Word(found.Outcome));
            json.WriteString("document", "inspection-folder");
            json.WriteString("indexSha256", found.IndexSha256);
            WriteParts(json, found.Parts);
        });

    private static void WriteParts(Utf8JsonWriter json, ImmutableArray<VerifiedPart> parts)
    {
        json.WriteStartArray("parts");
        foreach (var part in parts)
        {
            json.WriteStartObject();
            json.WriteString("question", part.Question);
            json.WriteString("outcome", Word(part.Outcome));
            json.WriteTexts("found", part.Sentences);
            json.WriteEndObject();
        }

        json.WriteEndArray();
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

    private static string Word(DocumentKind document) =>
        document switch
        {
            DocumentKind.Report => "report",
            DocumentKind.Protocol => "protocol",
            DocumentKind.Notice => "notice",
        };

    private static string Word(PartOutcome outcome) =>
        outcome switch
        {
            PartOutcome.Holds => "holds",
            PartOutcome.NotChecked => "not-checked",
            PartOutcome.Fails => "fails",
        };
}
