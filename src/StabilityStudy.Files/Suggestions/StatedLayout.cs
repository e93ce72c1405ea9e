namespace StabilityStudy.Files.Suggestions;

/// <summary>What study.toml states of a file already. It goes before everything that is guessed.</summary>
/// <param name="entries">The table of [read]; null where there is none.</param>
internal sealed class StatedLayout(TomlEntries? entries)
{
    private const string Wide = "wide";
    private static readonly ImmutableArray<string> s_tables = ["columns", "constants"];

    /// <summary>The lines that stand there, but for the names of files.</summary>
    public ImmutableArray<ReadLine> Lines { get; } =
    [.. LinesOf(entries).Where(line => line.Key is not ("file" or "more_files"))];

    /// <summary>Whether a line stands there.</summary>
    public bool Has(string table, string key) =>
        Lines.Any(line => line.Table == table && line.Key == key)
        || (
            table.StartsWith(Wide, StringComparison.Ordinal)
            && Lines.Any(line => line.Table.StartsWith(Wide, StringComparison.Ordinal))
        );

    /// <summary>A text of the table; null where it is not stated.</summary>
    public string? Text(string key) =>
        entries?.Entries.FirstOrDefault(entry => entry.Key == key)?.Value is TomlText text
            ? text.Content
            : null;

    /// <summary>A whole number of the table; null where it is not stated.</summary>
    public int? Number(string key) =>
        entries?.Entries.FirstOrDefault(entry => entry.Key == key)?.Value is TomlNumber number
        && int.TryParse(number.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var read)
            ? read
            : null;

    /// <summary>Our column for a header; null where none is stated for it.</summary>
    public string? ColumnOf(string header) =>
        Lines
            .FirstOrDefault(line =>
                line.Table == "columns"
                && (
                    line.Value == TomlLiteral.Quoted(header)
                    || line.Value.Contains(
                        TomlLiteral.Quoted(header) + ",",
                        StringComparison.Ordinal
                    )
                    || line.Value.EndsWith(
                        TomlLiteral.Quoted(header) + "]",
                        StringComparison.Ordinal
                    )
                )
            )
            ?.Key;

    /// <summary>What holds for every row; null where it is not stated.</summary>
    public string? Constant(string column) =>
        entries?.Entries.FirstOrDefault(entry => entry.Key == "constants")?.Value
            is TomlEntries constants
        && constants.Entries.FirstOrDefault(entry => entry.Key == column)?.Value is TomlText text
            ? text.Content
            : null;

    private static IEnumerable<ReadLine> LinesOf(TomlEntries? entries)
    {
        foreach (var entry in entries?.Entries ?? [])
        {
            if (entry.Value is TomlEntries table && s_tables.Contains(entry.Key))
            {
                foreach (var line in Of(table, entry.Key))
                {
                    yield return line;
                }
            }
            else if (entry.Value is TomlEntries values && entry.Key == "values")
            {
                foreach (var column in values.Entries)
                {
                    foreach (
                        var line in column.Value is TomlEntries words
                            ? Of(words, $"values.{column.Key}")
                            : []
                    )
                    {
                        yield return line;
                    }
                }
            }
            else if (entry.Value is TomlList list && entry.Key == Wide)
            {
                foreach (
                    var (part, i) in list.Items.OfType<TomlEntries>().Select((part, i) => (part, i))
                )
                {
                    foreach (var line in Of(part, FormattableString.Invariant($"wide.{i}")))
                    {
                        yield return line;
                    }
                }
            }
            else
            {
                yield return new(entry.Key, Written(entry.Value));
            }
        }
    }

    private static IEnumerable<ReadLine> Of(TomlEntries table, string path) =>
        table.Entries.Select(entry => new ReadLine(TomlLiteral.Key(entry.Key), Written(entry.Value))
        {
            Table = path,
        });

    private static string Written(TomlValue value) =>
        value switch
        {
            TomlText text => TomlLiteral.Quoted(text.Content),
            TomlList list => $"[{string.Join(", ", list.Items.Select(Written))}]",
            TomlEntries table =>
                $"{{ {string.Join(", ", table.Entries.Select(entry => $"{TomlLiteral.Key(entry.Key)} = {Written(entry.Value)}"))} }}",
            TomlNumber or TomlFlag or TomlMoment => value.Text.Trim(),
            _ => throw new InvalidOperationException(
                "A value of study.toml has one of these forms."
            ),
        };
}
