using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A value that may be absent: null then.</summary>
internal sealed class OptionalForm<T, TPresent>(
    Form<TPresent> form,
    Func<T, bool> isPresent,
    Func<T, TPresent> get
) : Form<T>
{
    public override void Write(Utf8JsonWriter json, T value)
    {
        if (isPresent(value))
        {
            form.Write(json, get(value));
        }
        else
        {
            json.WriteNullValue();
        }
    }

    public override JsonNode Schema(SchemaDefinitions definitions)
    {
        var schema = form.Schema(definitions).AsObject();
        if (schema["type"] is not JsonValue type)
        {
            return new JsonObject
            {
                ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }),
            };
        }

        schema["type"] = new JsonArray(type.DeepClone(), "null");
        if (schema["enum"] is JsonArray words)
        {
            words.Add(null);
        }

        return schema;
    }

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (stated.ValueKind == JsonValueKind.Null || computed.ValueKind == JsonValueKind.Null)
        {
            base.Compare(stated, computed, path, comparison);
        }
        else
        {
            form.Compare(stated, computed, path, comparison);
        }
    }
}

/// <summary>A value written in the form of what it holds.</summary>
internal sealed class DerivedForm<T, TInner>(Form<TInner> inner, Func<T, TInner> get) : Form<T>
{
    public override void Write(Utf8JsonWriter json, T value) => inner.Write(json, get(value));

    public override JsonNode Schema(SchemaDefinitions definitions) => inner.Schema(definitions);

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    ) => inner.Compare(stated, computed, path, comparison);
}

/// <summary>A form whose differences weigh more than those of a figure.</summary>
internal sealed class WeighedForm<T>(Form<T> form, ComparisonWeight weight) : Form<T>
{
    /// <summary>What a difference means.</summary>
    public ComparisonWeight Weight => weight;

    public override void Write(Utf8JsonWriter json, T value) => form.Write(json, value);

    public override JsonNode Schema(SchemaDefinitions definitions) => form.Schema(definitions);

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    ) => form.Compare(stated, computed, path, comparison.Weighing(weight));
}
