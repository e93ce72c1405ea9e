using static StabilityStudy.Files.Toml.ValueForms;

namespace StabilityStudy.Files.Notices;

/// <summary>How a whole SHA-256 is written.</summary>
internal static class DigestForm
{
    /// <summary>A digest as it is written: that of the text "test".</summary>
    public const string Example =
        "\"9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08\"";

    /// <summary>A whole SHA-256.</summary>
    public static readonly ValueForm<string> Sha256 = Text.When(
        "64 lower-case hexadecimal digits",
        (table, key, text) =>
            (text.Length == 64 && text.All(char.IsAsciiHexDigitLower))
            || table.Refuse(
                key,
                FileQueries.NotADigest,
                text,
                $"\"{text}\" is no SHA-256: 64 of the digits 0 to 9 and a to f."
            )
    );
}
