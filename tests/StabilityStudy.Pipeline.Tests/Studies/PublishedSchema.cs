using System.Text.Json;
using Json.Schema;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>The published schema of analysis.json, held against what the program writes by a validator that is not ours.</summary>
internal static class PublishedSchema
{
    private static readonly Lazy<JsonSchema> s_schema = new(() =>
        JsonSchema.FromText(
            File.ReadAllText(
                Path.Combine(
                    RepositoryFile.Root,
                    "src/StabilityStudy.Files/Json/analysis.schema.json"
                )
            )
        )
    );

    private static readonly EvaluationOptions s_options = new()
    {
        OutputFormat = OutputFormat.List,
        RequireFormatValidation = true,
    };

    /// <summary>What the schema forbids in a document; empty when it is valid.</summary>
    public static string FaultsOf(ReadOnlyMemory<byte> analysis)
    {
        using var document = JsonDocument.Parse(analysis);
        var found = s_schema.Value.Evaluate(document.RootElement, s_options);
        return found.IsValid
            ? ""
            : string.Join(
                '\n',
                (found.Details ?? [])
                    .Where(detail => detail.Errors is not null)
                    .Select(detail =>
                        $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}"
                    )
            );
    }
}
