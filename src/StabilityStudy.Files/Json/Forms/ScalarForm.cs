using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A value that is one JSON text, number or truth value.</summary>
/// <param name="type">Its type in JSON Schema.</param>
/// <param name="write">Writes it.</param>
/// <param name="detail">Further members of its schema; null for none.</param>
internal sealed class ScalarForm<T>(
    string type,
    Action<Utf8JsonWriter, T> write,
    Func<JsonObject>? detail = null
) : Form<T>
{
    public override void Write(Utf8JsonWriter json, T value) => write(json, value);

    public override JsonNode Schema(JsonObject definitions)
    {
        var schema = detail?.Invoke() ?? [];
        schema.Insert(0, "type", type);
        return schema;
    }
}

/// <summary>An estimate: written to the last digit, compared but for the rounding of another processor.</summary>
internal sealed class NumberForm : Form<double>
{
    /// <summary>Largest difference of an estimate, relative to its size: other processors round the last digits otherwise.</summary>
    private const double Tolerance = 1e-9;

    public override void Write(Utf8JsonWriter json, double value) => json.WriteNumberValue(value);

    public override JsonNode Schema(JsonObject definitions) =>
        new JsonObject { ["type"] = "number" };

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    )
    {
        if (
            stated.ValueKind != JsonValueKind.Number
            || computed.ValueKind != JsonValueKind.Number
            || !IsNear(stated.GetDouble(), computed.GetDouble())
        )
        {
            base.Compare(stated, computed, path, comparison);
        }
    }

    private static bool IsNear(double one, double two) =>
        double.IsFinite(one)
        && double.IsFinite(two)
        && Math.Abs(one - two) <= Tolerance * Math.Max(Math.Abs(one), Math.Abs(two));
}
