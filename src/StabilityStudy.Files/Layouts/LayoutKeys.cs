using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Layouts;

/// <summary>The keys of "read": a table for each kind of file.</summary>
internal static class LayoutKeys
{
    private const string Example = "{ delimiter = \";\" }";

    public static readonly KeyTable Table = new();

    public static readonly ImmutableArray<TableKey> Sections =
    [
        Table.AddTable(
            "specimens",
            Optional,
            SectionKeys.Table,
            "of the file of tubes; the keys are those of read.results",
            Example,
            isDescribedElsewhere: true
        ),
        Table.AddTable("results", Optional, SectionKeys.Table, "of the file of results", Example),
        Table.AddTable(
            "controls",
            Optional,
            SectionKeys.Table,
            "of the file of control results; the keys are those of read.results",
            Example,
            isDescribedElsewhere: true
        ),
    ];

    // csharpier-ignore-start
    public static readonly TableKey Pairs = Table.AddTable("pairs", Optional, SectionKeys.OfPairs.Table, "one file with a row a pair in place of tubes and results", "{ file = \"pairs.csv\" }");
    // csharpier-ignore-end
}

/// <summary>The keys of each table of "read".</summary>
internal static class SectionKeys
{
    private const string FormatSigns = "dMyHhmst .,-/:";

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

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<char> Delimiter = Table.Add("delimiter", Optional, Word(Delimiters).Or(','), "sign between fields; a comma when not given", "\";\"");
    public static readonly Key<bool> Decimal = Table.Add("decimal", Optional, Word(DecimalSigns), "decimal sign; a point when not given", "\",\"");
    public static readonly Key<FileEncoding> Encoding = Table.Add("encoding", Optional, Word(Encodings).Or(FileEncoding.Utf8), "how characters are stored; utf-8 when not given", "\"latin-1\"");
    public static readonly Key<string?> DateFormat = Table.Add("date_format", Optional, Text.When("d, M, yyyy, H or h with tt, mm, ss and . , - / : between them", TellsTime).As<string?>(null, format => format), "how times are written: d day, M month, yyyy year, H hour (h with tt for AM and PM), m minute, s second", "\"dd.MM.yyyy HH:mm\"");
    public static readonly TableKey Columns = Table.AddTable("columns", Optional, KeyTable.Free, "our column = the facility's header; other columns are then left aside", "{ result = \"Value\" }");
    public static readonly TableKey Values = Table.AddTable("values", Optional, KeyTable.Free, "for a column: the facility's word = ours", "{ time_point = { T0 = \"baseline\" } }");
    public static readonly TableKey Constants = Table.AddTable("constants", Optional, KeyTable.Free, "what holds for every row and is not in the file", "{ analyte = \"aPTT\" }");
    // csharpier-ignore-end

    /// <summary>The same with the name of the file.</summary>
    public static class OfPairs
    {
        public static readonly KeyTable Table = SectionKeys.Table.Copy(
            Columns with
            {
                Example = "{ baseline_result = \"First\", delayed_result = \"Second\" }",
            }
        );

        public static readonly Key<string> File = Table.Add(
            "file",
            Required,
            Text,
            "name of the file",
            "\"pairs.csv\""
        );
    }

    private static bool TellsTime(TomlTable table, Key key, string format)
    {
        string[] needed = ["d", "M", "yyyy", "mm"];
        bool Has(string part) => format.Contains(part, StringComparison.Ordinal);
        return (
                format.All(FormatSigns.Contains)
                && needed.All(Has)
                && (Has("h") ? Has("tt") && !Has("H") : Has("H") && !Has("t"))
            )
            || table.Refuse(
                key,
                FileQueries.UnknownWord,
                format,
                $"\"{format}\" does not say how times are written.",
                "Write it with dd, MM, yyyy, HH, mm and ss, such as \"dd.MM.yyyy HH:mm\", or with hh and tt for AM and PM, such as \"M/d/yyyy h:mm tt\"; the year has four digits."
            );
    }
}
