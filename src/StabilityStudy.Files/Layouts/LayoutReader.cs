using System.Collections.Frozen;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Layouts;

/// <summary>Reads [read.specimens], [read.results], [read.controls] and [read.pairs] of study.toml.</summary>
internal static class LayoutReader
{
    private const string FlagColumn = "flag";

    /// <summary>The columns with the layout that study.toml gives for them, if it gives one.</summary>
    /// <param name="needsZoneRules">Whether times without an offset are to be read.</param>
    public static CsvColumns Apply(TomlTable? read, CsvColumns columns, bool needsZoneRules) =>
        LayoutKeys.Sections.First(key => key.Name == columns.Section) is var section
        && read?.OptionalTable(section) is { } table
            ? columns with
            {
                Layout = ReadLayout(table, columns, needsZoneRules),
            }
            : columns;

    /// <summary>The file with a row a pair and its columns; null when study.toml describes none.</summary>
    public static (string Name, CsvColumns Columns)? FindPairs(TomlTable? read, bool needsZoneRules)
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
                Layout = ReadLayout(table, columns, needsZoneRules),
            }
        );
    }

    private static FileLayout ReadLayout(TomlTable table, CsvColumns columns, bool needsZoneRules)
    {
        var texts = KeyTable.Of(columns.Names, ValueForms.Text);
        var valueTable = table.OptionalTable(SectionKeys.Values, texts);
        var values = ReadValues(valueTable, columns);
        var format = table.Read(SectionKeys.DateFormat);
        RequireCentury(table, format);
        var zone = ZoneReader.Read(table, SectionKeys.TimeZone, needsZoneRules);
        return new(
            Delimiter: table.Read(SectionKeys.Delimiter),
            HasDecimalComma: table.Read(SectionKeys.Decimal),
            Encoding: table.Read(SectionKeys.Encoding),
            DateFormat: format,
            Columns: Headers(table.OptionalTable(SectionKeys.Columns, texts)),
            Values: values
                .Where(item => item.Key != FlagColumn)
                .ToFrozenDictionary(StringComparer.Ordinal),
            Constants: Texts(table.OptionalTable(SectionKeys.Constants, texts))
        )
        {
            Form = new TableForm(
                Sheet: table.Read(SectionKeys.Sheet),
                HeaderLine: table.Has(SectionKeys.HeaderLine)
                    ? table.Read(SectionKeys.HeaderLine)
                    : null,
                HeaderRows: table.Read(SectionKeys.HeaderRows),
                FooterLines: table.Read(SectionKeys.FooterLines),
                HeaderRepeats: table.Read(SectionKeys.HeaderRepeats),
                Units: table.Read(SectionKeys.Units),
                EmptyCell: table.Read(SectionKeys.EmptyCell),
                Numbers: table.Read(SectionKeys.Numbers)
            ),
            Parts =
            [
                .. table
                    .Tables(SectionKeys.Wide)
                    .Select(part => new TablePart(
                        Headers(part.OptionalTable(PartKeys.Columns, texts)),
                        Texts(part.OptionalTable(PartKeys.Constants, texts))
                    )),
            ],
            Century = table.IsSound(SectionKeys.Century) ? table.Read(SectionKeys.Century) : null,
            ZoneName = zone?.Name,
            ZoneRules = zone?.Rules,
            // The name of a file of pairs is read by its own key, which must be given.
            File = columns.Section == LayoutKeys.Pairs.Name ? null : table.Read(SectionKeys.File),
            TubePattern = table.Read(SectionKeys.TubePattern) is { } pattern
                ? new TubePattern(pattern)
                : null,
            KeepsWholeCode = table.Read(SectionKeys.WholeCode),
            TimePointOfTube = Texts(table.OptionalTable(SectionKeys.TimePoints)),
            Conversions = UnitSettings.ReadConversions(table.OptionalTable(SectionKeys.Convert)),
            Flags = FlagSettings.Read(valueTable, values.GetValueOrDefault(FlagColumn)),
            OtherAnalytes = table.Read(SectionKeys.OtherAnalytes),
            TimesFromMessages = table.Read(SectionKeys.TimesFromMessages),
            Statuses = StatusSettings.Read(table.OptionalTable(SectionKeys.Statuses)),
            TrimsSpaces = table.Read(SectionKeys.TrimSpaces),
            MoreFiles = table.Read(SectionKeys.MoreFiles),
        };
    }

    private static void RequireCentury(TomlTable table, string? format)
    {
        if (
            format?.Contains("yyyy", StringComparison.Ordinal) == false
            && !table.Has(SectionKeys.Century)
        )
        {
            table.Fault(
                SectionKeys.Century,
                FileQueries.MissingKey,
                format,
                "The years have two digits, and nothing says which century they mean.",
                "Add century = 2000, with which 26 is 2026."
            );
        }
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
            else if (column.Name == "unit")
            {
                UnitSettings.CheckName(table, TextOf(theirs), theirs, ours);
            }
        }

        return words;
    }

    private static bool HasDigit(string text) => text.Any(char.IsAsciiDigit);

    private static FrozenDictionary<string, ImmutableArray<string>> Headers(TomlTable? table) =>
        (table?.KnownKeys ?? []).ToFrozenDictionary(
            key => key,
            key => table?.Read(HeadersOf(key)) ?? [],
            StringComparer.Ordinal
        );

    internal static FrozenDictionary<string, string> Texts(TomlTable? table) =>
        (table?.KnownKeys ?? []).ToFrozenDictionary(
            key => key,
            key => table?.Read(TextOf(key)) ?? "",
            StringComparer.Ordinal
        );

    internal static Key<string> TextOf(string name) =>
        new(name, Need.Optional, ValueForms.Text, "", "");

    private static Key<ImmutableArray<string>> HeadersOf(string name) =>
        new(name, Need.Optional, ValueForms.TextOrTexts, "", "");

    private static TableKey WordsOf(string column) =>
        new(column, Need.Optional, KeyTable.Free, false, "", "");
}
