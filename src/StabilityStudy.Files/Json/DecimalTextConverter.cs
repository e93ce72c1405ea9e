using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Json;

/// <summary>Decimals as texts, so that no reader turns 7.50 into a double.</summary>
internal sealed class DecimalTextConverter : JsonConverter<decimal>
{
    public override decimal Read(
        ref Utf8JsonReader reader,
        Type typeToConvert,
        JsonSerializerOptions options
    ) =>
        reader.TokenType == JsonTokenType.String
        && StrictNumber.Read(reader.GetString() ?? "", out var number) is null
            ? number
            : throw new JsonException("A decimal is a text such as \"7.5\".");

    public override void Write(
        Utf8JsonWriter writer,
        decimal value,
        JsonSerializerOptions options
    ) => writer.WriteStringValue(value.ToString(CultureInfo.InvariantCulture));
}
