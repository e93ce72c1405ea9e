using System.Collections.Frozen;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Layouts;

/// <summary>Reads [read.specimens], [read.results], [read.controls] and [read.pairs] of study.toml.</summary>
internal static class LayoutReader
{
    /// <summary>The columns with the layout that study.toml gives for them, if it gives one.</summary>
    public static CsvColumns Apply(TomlTable? read, CsvColumns columns) =>
        LayoutKeys.Sections.First(key => key.Name == columns.Section) is var section
        && read?.OptionalTable(section) is { } table
            ? columns with
            {
                Layout = ReadLayout(table, columns),
            }
            : columns;

    /// <summary>The file with a row a pair and its columns; null when study.toml describes none.</summary>
    public static (string Name, CsvColumns Columns)? FindPairs(TomlTable? read)
    {
        if (read?.OptionalTable(LayoutKeys.Pairs) is not { } table)
        {
            return null;
        }

        var columns = PairColumns.Columns;
        return (
            table.Read(SectionKeys.OfPairs.File),
            columns with
            {
                Layout = ReadLayout(table, columns),
            }
        );
    }

    private static FileLayout ReadLayout(TomlTable table, CsvColumns columns)
    {
        var texts = KeyTable.Of(columns.Names, ValueForms.Text);
        return new(
            Delimiter: table.Read(SectionKeys.Delimiter),
            HasDecimalComma: table.Read(SectionKeys.Decimal),
            Encoding: table.Read(SectionKeys.Encoding),
            DateFormat: table.Read(SectionKeys.DateFormat),
            Columns: Texts(table.OptionalTable(SectionKeys.Columns, texts)),
            Values: ReadValues(table.OptionalTable(SectionKeys.Values, texts), columns),
            Constants: Texts(table.OptionalTable(SectionKeys.Constants, texts))
        );
    }

    private static FrozenDictionary<string, FrozenDictionary<string, string>> ReadValues(
        TomlTable? table,
        CsvColumns columns
    ) =>
        columns
            .All.Where(column => table?.KnownKeys.Contains(column.Name) == true)
            .ToFrozenDictionary(
                column => column.Name,
                column => ReadWords(column, table?.OptionalTable(WordsOf(column.Name))),
                StringComparer.Ordinal
            );

    /// <summary>Words stand for words. A setting that turned one number or time into another would change the data unseen.</summary>
    private static FrozenDictionary<string, string> ReadWords(Column column, TomlTable? table)
    {
        var words = Texts(table);
        foreach (var (theirs, ours) in words)
        {
            if (FileLayout.IsMeasured(column) && (HasDigit(theirs) || HasDigit(ours)))
            {
                table?.Fault(
                    TextOf(theirs),
                    FileQueries.ValueStandsForNumber,
                    ours,
                    $"\"{theirs}\" is to be read as \"{ours}\" in {column.Name}; a number or time is never read as another."
                );
            }
        }

        return words;
    }

    private static bool HasDigit(string text) => text.Any(char.IsAsciiDigit);

    private static FrozenDictionary<string, string> Texts(TomlTable? table) =>
        (table?.KnownKeys ?? []).ToFrozenDictionary(
            key => key,
            key => table?.Read(TextOf(key)) ?? "",
            StringComparer.Ordinal
        );

    private static Key<string> TextOf(string name) =>
        new(name, Need.Optional, ValueForms.Text, "", "");

    private static TableKey WordsOf(string column) =>
        new(column, Need.Optional, KeyTable.Free, false, "", "");
}
