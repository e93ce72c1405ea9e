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

    public override JsonNode Schema(SchemaDefinitions definitions)
    {
        var schema = detail?.Invoke() ?? [];
        schema.Insert(0, "type", type);
        return schema;
    }
}

/// <summary>
/// A computed figure, written to <see cref="AnalysisJson.Digits"/> significant digits: exponential functions and logarithms are those of the platform's
/// library, and their last digit differs between processors. With each of their values moved at random to a neighbor, two in five figures of
/// the example studies came out otherwise in some digit, by up to 1e-11 of themselves; of those, one in 50 still did so in 13 digits, one in 400 in 12 and
/// one in 4,000 in 11.
/// </summary>
internal sealed class NumberForm : Form<double>
{
    /// <summary>Largest difference of a figure, relative to its size: at least ten steps of its last digit, for what other processors, and other versions that add up in another order, make of it.</summary>
    private const double Tolerance = 1e-9;

    private static readonly string s_rounding = string.Create(
        CultureInfo.InvariantCulture,
        $"E{AnalysisJson.Digits - 1}"
    );

    /// <summary>The number to as many digits as are written.</summary>
    public static double Rounded(double value)
    {
        var rounded = double.Parse(
            value.ToString(s_rounding, CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );
        // The largest of all numbers would become infinite.
        return double.IsFinite(rounded) ? rounded : value;
    }

    public override void Write(Utf8JsonWriter json, double value) =>
        json.WriteNumberValue(Rounded(value));

    public override JsonNode Schema(SchemaDefinitions definitions) =>
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
