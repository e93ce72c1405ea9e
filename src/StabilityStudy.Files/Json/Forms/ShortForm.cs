using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A value as one text where that says all of it, else in its form.</summary>
/// <param name="form">The form.</param>
/// <param name="shortly">The text; null where it does not say all.</param>
internal sealed class ShortForm<T>(Form<T> form, Func<T, string?> shortly) : Form<T>
{
    public override void Write(Utf8JsonWriter json, T value)
    {
        if (shortly(value) is { } text)
        {
            json.WriteStringValue(text);
        }
        else
        {
            form.Write(json, value);
        }
    }

    public override JsonNode Schema(SchemaDefinitions definitions) =>
        new JsonObject
        {
            ["anyOf"] = new JsonArray(
                new JsonObject { ["type"] = "string" },
                form.Schema(definitions)
            ),
        };

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (computed.ValueKind == JsonValueKind.String)
        {
            base.Compare(stated, computed, path, comparison);
        }
        else
        {
            form.Compare(stated, computed, path, comparison);
        }
    }
}
