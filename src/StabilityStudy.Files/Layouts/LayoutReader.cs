using System.Collections.Frozen;
using System.Collections.Immutable;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Layouts;

/// <summary>Reads [read.specimens], [read.results], [read.controls] and [read.pairs] of study.toml.</summary>
internal static class LayoutReader
{
    /// <summary>The tables under "read".</summary>
    public static readonly TableShape Read = new(
        "read",
        "specimens",
        "results",
        "controls",
        "pairs"
    );

    /// <summary>The keys of each.</summary>
    public static readonly TableShape Section = new(
        "read.results",
        "delimiter",
        "decimal",
        "encoding",
        "date_format",
        "columns",
        "values",
        "constants"
    );

    /// <summary>The keys of [read.pairs].</summary>
    public static readonly TableShape Pairs = new("read.pairs", [.. Section.Keys, "file"]);

    private const string FormatSigns = "dMyHhmst .,-/:";

    private static readonly TableShape FacilityWords = new("values");

    private static readonly WordSet<char> Delimiters = new(
        (",", ','),
        (";", ';'),
        ("|", '|'),
        ("tab", '\t')
    );

    private static readonly WordSet<bool> DecimalSigns = new((".", false), (",", true));

    private static readonly WordSet<FileEncoding> Encodings = new(
        ("utf-8", FileEncoding.Utf8),
        ("utf-16", FileEncoding.Utf16),
        ("latin-1", FileEncoding.Latin1),
        ("windows-1252", FileEncoding.Windows1252)
    );

    /// <summary>The columns with the layout that study.toml gives for them, if it gives one.</summary>
    public static CsvColumns Apply(TomlTable? read, CsvColumns columns) =>
        read?.OptionalTable(columns.Section, Section) is { } table
            ? columns with
            {
                Layout = ReadLayout(table, columns),
            }
            : columns;

    /// <summary>The file with a row a pair and its columns; null when study.toml describes none.</summary>
    public static DataFile? FindPairs(TomlTable? read)
    {
        if (read?.OptionalTable("pairs", Pairs) is not { } table)
        {
            return null;
        }

        var columns = CsvColumns.Pairs with { Layout = ReadLayout(table, CsvColumns.Pairs) };
        var name = table.RequireText("file");
        return new DataFile(name, name, columns);
    }

    private static FileLayout ReadLayout(TomlTable table, CsvColumns columns)
    {
        var names = new TableShape("columns", columns.All);
        return new(
            Delimiter: table.OptionalChoice("delimiter", Delimiters) ?? ',',
            HasDecimalComma: table.OptionalChoice("decimal", DecimalSigns) ?? false,
            Encoding: table.OptionalChoice("encoding", Encodings) ?? FileEncoding.Utf8,
            DateFormat: ReadDateFormat(table),
            Columns: Texts(table.OptionalTable("columns", names)),
            Values: ReadValues(table.OptionalTable("values", names)),
            Constants: Texts(table.OptionalTable("constants", names))
        );
    }

    private static FrozenDictionary<string, FrozenDictionary<string, string>> ReadValues(
        TomlTable? table
    ) =>
        Keys(table)
            .ToFrozenDictionary(
                column => column,
                column => ReadWords(column, table?.OptionalTable(column, FacilityWords)),
                StringComparer.Ordinal
            );

    /// <summary>Words stand for words. A setting that turned one number or time into another would change the data unseen.</summary>
    private static FrozenDictionary<string, string> ReadWords(string column, TomlTable? table)
    {
        var words = Texts(table);
        foreach (var (theirs, ours) in words)
        {
            if (FileLayout.IsMeasured(column) && (HasDigit(theirs) || HasDigit(ours)))
            {
                table!.Fault(
                    theirs,
                    FileQueries.ValueStandsForNumber,
                    ours,
                    $"\"{theirs}\" is to be read as \"{ours}\" in {column}; a number or time is never read as another.",
                    "Remove it, and correct the row in its own file with a deviation that says why."
                );
            }
        }

        return words;
    }

    private static bool HasDigit(string text) => text.Any(char.IsAsciiDigit);

    private static FrozenDictionary<string, string> Texts(TomlTable? table) =>
        Keys(table)
            .ToFrozenDictionary(
                key => key,
                key => table?.OptionalText(key) ?? "",
                StringComparer.Ordinal
            );

    // A key that is not known has its query already.
    private static IEnumerable<string> Keys(TomlTable? table) =>
        table is null ? [] : table.Keys.Where(table.Knows).Distinct(StringComparer.Ordinal);

    private static string? ReadDateFormat(TomlTable table)
    {
        var format = table.OptionalText("date_format");
        ImmutableArray<string> needed = ["d", "M", "yyyy", "mm"];
        bool Has(string part) => format.Contains(part, StringComparison.Ordinal);
        if (
            format is null
            || (
                format.All(FormatSigns.Contains)
                && needed.All(Has)
                && (Has("h") ? Has("tt") && !Has("H") : Has("H") && !Has("t"))
            )
        )
        {
            return format;
        }

        table.Fault(
            "date_format",
            FileQueries.UnknownWord,
            format,
            $"\"{format}\" does not say how times are written.",
            "Write it with dd, MM, yyyy, HH, mm and ss, such as \"dd.MM.yyyy HH:mm\", or with hh and tt for AM and PM, such as \"M/d/yyyy h:mm tt\"; the year has four digits."
        );
        return null;
    }
}
