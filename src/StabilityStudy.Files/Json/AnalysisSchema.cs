using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;

namespace StabilityStudy.Files.Json;

/// <summary>The published schema of analysis.json.</summary>
public static class AnalysisSchema
{
    private static readonly JsonSchemaExporterOptions ExporterOptions = new()
    {
        TreatNullObliviousAsNonNullable = true,
        TransformSchemaNode = DescribeTexts,
    };

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        TypeInfoResolver = AnalysisJson.Options.TypeInfoResolver,
    };

    /// <summary>The schema as JSON text (JSON Schema 2020-12).</summary>
    public static string ToJson()
    {
        var schema = JsonSchemaExporter
            .GetJsonSchemaAsNode(AnalysisJson.AnalysisType, ExporterOptions)
            .AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", AnalysisJson.FileName);
        return schema.ToJsonString(Indented) + "\n";
    }

    // The converters of decimals and enums are our own, so the exporter knows nothing about their texts.
    private static JsonNode DescribeTexts(JsonSchemaExporterContext context, JsonNode schema)
    {
        var type = context.TypeInfo.Type;
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        JsonNode textType = inner == type ? "string" : new JsonArray("string", "null");
        if (inner == typeof(decimal))
        {
            return new JsonObject { ["type"] = textType, ["pattern"] = "^-?[0-9]+(\\.[0-9]+)?$" };
        }

        return inner.IsEnum
            ? new JsonObject
            {
                ["type"] = textType,
                ["enum"] = new JsonArray([
                    .. Enum.GetNames(inner).Select(name => (JsonNode)KebabCase.Of(name)),
                ]),
            }
            : schema;
    }
}
