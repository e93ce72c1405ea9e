using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace StabilityStudy.Files.Json;

/// <summary>
/// Enum members as words: NotSupported is "not-supported". Only that very text is read; the converter of the framework
/// would also take "notSupported".
/// </summary>
internal sealed class KebabCaseConverter<T> : JsonConverter<T>
    where T : struct, Enum
{
    private static readonly ImmutableArray<(T Value, string Word)> Members =
    [
        .. Enum.GetValues<T>().Select(value => (value, KebabCase.Of(value.ToString()))),
    ];

    public override T Read(
        ref Utf8JsonReader reader,
        Type typeToConvert,
        JsonSerializerOptions options
    )
    {
        if (reader.TokenType == JsonTokenType.String)
        {
            foreach (var (value, word) in Members)
            {
                if (reader.ValueTextEquals(word))
                {
                    return value;
                }
            }
        }

        throw new JsonException(
            $"Known words are {string.Join(", ", Members.Select(member => member.Word))}."
        );
    }

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
        writer.WriteStringValue(
            Members.First(member => EqualityComparer<T>.Default.Equals(member.Value, value)).Word
        );
}

/// <summary>Names as words with hyphens.</summary>
internal static class KebabCase
{
    /// <summary>"NotSupported" is "not-supported".</summary>
    public static string Of(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}
