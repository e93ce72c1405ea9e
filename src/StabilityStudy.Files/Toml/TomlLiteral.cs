using System.Text;

namespace StabilityStudy.Files.Toml;

/// <summary>Writes texts as TOML has them.</summary>
internal static class TomlLiteral
{
    /// <summary>A text on one line, in double quotes.</summary>
    public static string Quoted(string text)
    {
        var written = new StringBuilder("\"");
        foreach (var c in text)
        {
            if (c is '\\' or '"')
            {
                written.Append('\\').Append(c);
            }
            else if (char.IsControl(c))
            {
                written.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}");
            }
            else
            {
                written.Append(c);
            }
        }

        return written.Append('"').ToString();
    }

    /// <summary>Texts in brackets, or the text itself where there is one.</summary>
    public static string Quoted(ImmutableArray<string> texts) =>
        texts is [var only] ? Quoted(only) : $"[{string.Join(", ", texts.Select(Quoted))}]";

    /// <summary>A key of one part: bare where TOML allows that.</summary>
    public static string Key(string name) =>
        name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            ? name
            : Quoted(name);

    /// <summary>A table in braces, of texts.</summary>
    public static string Braces(IEnumerable<(string Key, string Text)> entries) =>
        $"{{ {string.Join(", ", entries.Select(entry => $"{Key(entry.Key)} = {Quoted(entry.Text)}"))} }}";
}
