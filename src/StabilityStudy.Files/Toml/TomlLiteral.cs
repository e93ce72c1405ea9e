namespace StabilityStudy.Files.Toml;

/// <summary>Writes texts as TOML has them.</summary>
internal static class TomlLiteral
{
    /// <summary>A text on one line, in double quotes.</summary>
    public static string Quoted(string text) =>
        "\""
        + text.Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("\"", "\\\"", StringComparison.Ordinal)
            .Replace("\t", "\\t", StringComparison.Ordinal)
            .Replace("\r", "\\r", StringComparison.Ordinal)
            .Replace("\n", "\\n", StringComparison.Ordinal)
        + "\"";
}
