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

/// <summary>
/// A computed figure, written to 12 significant digits. Exponential functions and logarithms are those of the platform's library, and their
/// last digit differs between processors; rounded, such a difference is gone but where the digits cut off lie within it of half a unit.
/// Compared but for what is left of such differences, and for the order in which another version adds up.
/// </summary>
internal sealed class NumberForm : Form<double>
{
    /// <summary>Largest difference of a figure, relative to its size.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>12 significant digits: one before the point, and these behind it.</summary>
    private const string Rounding = "E11";

    /// <summary>The number to as many digits as are written.</summary>
    public static double Rounded(double value) =>
        double.Parse(
            value.ToString(Rounding, CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );

    public override void Write(Utf8JsonWriter json, double value) =>
        json.WriteNumberValue(Rounded(value));

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
