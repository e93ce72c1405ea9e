using System.Text;

namespace StabilityStudy.Files.Toml;

/// <summary>Writes values as TOML that were read from it; comments are not among them.</summary>
internal static class TomlWriting
{
    /// <summary>A table: plain values first, then lists of tables under headers where they are named so.</summary>
    /// <param name="table">The table.</param>
    /// <param name="underHeaders">Keys whose lists of tables stand under headers, [[key]] each.</param>
    public static string Write(TomlEntries table, ImmutableArray<string> underHeaders)
    {
        var text = new StringBuilder();
        foreach (var entry in table.Entries.Where(entry => !underHeaders.Contains(entry.Key)))
        {
            Line(text, entry);
        }

        foreach (var entry in table.Entries.Where(entry => underHeaders.Contains(entry.Key)))
        {
            foreach (var item in ((TomlList)entry.Value).Items.Cast<TomlEntries>())
            {
                text.Append(CultureInfo.InvariantCulture, $"\n[[{entry.Key}]]\n");
                foreach (var inner in item.Entries)
                {
                    Line(text, inner);
                }
            }
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, TomlEntry entry) =>
        text.Append(KeyOf(entry.Key))
            .Append(" = ")
            .Append(Of(entry.Value, isTop: true))
            .Append('\n');

    private static string Of(TomlValue value, bool isTop) =>
        value switch
        {
            TomlText text => TomlLiteral.Quoted(text.Content),
            // A list of tables is read a table a line.
            TomlList { Items: [TomlEntries, ..] } list when isTop =>
                $"[\n{string.Concat(list.Items.Select(item => $"  {Of(item, isTop: false)},\n"))}]",
            TomlList list =>
                $"[{string.Join(", ", list.Items.Select(item => Of(item, isTop: false)))}]",
            TomlEntries table =>
                $"{{ {string.Join(", ", table.Entries.Select(entry => $"{KeyOf(entry.Key)} = {Of(entry.Value, isTop: false)}"))} }}",
            TomlFlag flag => flag.IsTrue ? "true" : "false",
            _ => value.Text.Trim(),
        };

    private static string KeyOf(string key) =>
        key.Length > 0 && key.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            ? key
            : TomlLiteral.Quoted(key);
}
