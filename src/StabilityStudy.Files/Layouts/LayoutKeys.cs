using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;
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
    private const string FormatSigns = "dMyHhmstfz .,-/:";
    private const int LargestHeaderLine = 1000;
    private const int MostFooterLines = 1000;

    private static readonly WordSet<char> Delimiters = new(
        (",", ','),
        (";", ';'),
        ("|", '|'),
        ("tab", '\t')
    );

    private static readonly WordSet<bool> DecimalSigns = new((".", false), (",", true));

    internal static readonly WordSet<FileEncoding> Encodings = new(
        ("utf-8", FileEncoding.Utf8),
        ("utf-16", FileEncoding.Utf16),
        ("latin-1", FileEncoding.Latin1),
        ("windows-1252", FileEncoding.Windows1252)
    );

    private static readonly WordSet<UnitPlace> UnitPlaces = new(
        ("in a column", UnitPlace.Column),
        ("in the header", UnitPlace.Header),
        ("in the line below", UnitPlace.LineBelow)
    );

    private static readonly WordSet<EmptyCell> EmptyCells = new(
        ("no result", Tables.EmptyCell.Missing),
        ("not tested", Tables.EmptyCell.NotTested),
        ("not planned", Tables.EmptyCell.NotPlanned)
    );

    private static readonly WordSet<ShownNumber> ShownNumbers = new(
        ("as shown", ShownNumber.Shown),
        ("as stored", ShownNumber.Stored)
    );

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string?> File = Table.Add("file", Optional, PlainNames.Form.As<string?>(null, name => name), "name of the file; goes before its name under files", "\"export.csv\"");
    public static readonly Key<string?> Sheet = Table.Add("sheet", Optional, OptionalText, "name of the sheet of a workbook (.xlsx); its only visible one when not given", "\"Export\"");
    public static readonly Key<int> HeaderLine = Table.Add("header_line", Optional, Whole(1, LargestHeaderLine), "line of the header, where lines of other content come before it; the first line that is not empty when not given", "6");
    public static readonly Key<int> HeaderRows = Table.Add("header_rows", Optional, Whole(1, 3).Or(1), "lines of which the header consists, joined by a space; a title over several columns counts for each of them; 1 when not given", "2");
    public static readonly Key<int> FooterLines = Table.Add("footer_lines", Optional, Whole(1, MostFooterLines), "lines behind the last row that are left out, empty ones not counted", "1");
    public static readonly Key<bool> HeaderRepeats = Table.Add("header_repeats", Optional, Flag, "whether further blocks stand below under the same header, each with lines of a single field above it, which are left out", "true");
    public static readonly Key<UnitPlace> Units = Table.Add("units", Optional, Word(UnitPlaces), "where the units of results stand; in the header they stand in brackets behind the name; in a column when not given", "\"in the header\"");
    public static readonly Key<EmptyCell?> EmptyCell = Table.Add("empty_cell", Depends, Word(EmptyCells).OrNone(), "what an empty cell means where a row has several results; needed where there is one", "\"not tested\"");
    public static readonly Key<ShownNumber?> Numbers = Table.Add("numbers", Depends, Word(ShownNumbers).OrNone(), "which number was reported, where cells of a workbook show fewer decimals than they store; needed where they do", "\"as shown\"");
    public static readonly Key<char> Delimiter = Table.Add("delimiter", Optional, Word(Delimiters).Or(','), "sign between fields; a comma when not given", "\";\"");
    public static readonly Key<bool> Decimal = Table.Add("decimal", Optional, Word(DecimalSigns), "decimal sign; a point when not given", "\",\"");
    public static readonly Key<FileEncoding> Encoding = Table.Add("encoding", Optional, Word(Encodings).Or(FileEncoding.Utf8), "how characters are stored; utf-8 when not given", "\"latin-1\"");
    public static readonly Key<bool> TrimSpaces = Table.Add("trim_spaces", Optional, Flag, "whether spaces around a field are no part of it", "true");
    public static readonly Key<string?> DateFormat = Table.Add("date_format", Optional, Text.When("d, M, yyyy or yy, H or h with tt, mm, ss, f, zzz and . , - / : between them", TellsTime).As<string?>(null, format => format), "how times are written: d day, M month, yyyy year (yy with century), H hour (h with tt for AM and PM), m minute, s second, zzz offset", "\"dd.MM.yyyy HH:mm\"");
    public static readonly Key<int> Century = Table.Add("century", Depends, Whole(1901, 2000), "first year that two digits can mean: with 2000, 26 is 2026; needed for yy in date_format", "2000");
    public static readonly Key<string?> TimeZone = Table.Add("time_zone", Optional, OptionalText with { Allowed = ZoneReader.Allowed }, "zone of this file's times, where it is not that of the study", "\"UTC\"");
    public static readonly Key<string?> TubePattern = Table.Add("tube_pattern", Optional, Text.When("{specimen}, then {tube}, {letter} or {digit}, with signs between them", IsPattern).As<string?>(null, text => text), "how the code of the tube's column holds specimen and tube; the tube is what follows the last sign between them", "\"{specimen}-{tube}\"");
    public static readonly Key<bool> WholeCode = Table.Add("whole_code", Optional, Flag, "whether the code of the tube is the whole code that tube_pattern splits, as in N-017-A, where the file of tubes has it so; time_point_of_tube goes by the part", "true");
    public static readonly TableKey TimePoints = Table.AddTable("time_point_of_tube", Optional, KeyTable.Free, "for a tube, or for codes of tubes with * in place of what may stand there: the time point at which it is tested, where no column says so; where the time point is known and no column names the tube, the tube that is tested then", "{ A = \"baseline\", B = \"6 h\", \"H-*-C\" = \"4 h\" }");
    public static readonly TableKey Columns = Table.AddTable("columns", Optional, KeyTable.Free, "our column = the facility's header, or several in brackets, of which the fields are joined by a space; other columns are then left aside", "{ result = \"Value\", tested_at = [\"Date\", \"Time\"] }");
    public static readonly TableKey Values = Table.AddTable("values", Optional, KeyTable.Free, "for a column: the facility's word = ours; for flag: what the flag means, \"harmless\", \"failed\" or \"reportable with note\"", "{ time_point = { T0 = \"baseline\" } }");
    public static readonly TableKey Constants = Table.AddTable("constants", Optional, KeyTable.Free, "what holds for every row and is not in the file", "{ analyte = \"aPTT\" }");
    public static readonly TableKey Convert = Table.AddTable("convert", Optional, KeyTable.Free, "unit of the file = unit of the protocol: results are converted, within one kind of quantity and exactly", "{ \"mg/dL\" = \"g/L\" }");
    public static readonly Key<ImmutableArray<string>> OtherAnalytes = Table.Add("other_analytes", Optional, Texts, "codes in the analyte's column that are not of this study, as the file writes them: their rows are left aside and counted", "[\"PT\", \"FIB\"]");
    public static readonly TableKey Statuses = Table.AddTable("result_status", Depends, KeyTable.Free, "for a status of results in messages (OBX-11): \"result\", \"no result\" or \"left aside\", which is counted; needed for each but F (final) and X (cannot be obtained, which is no result), none is a result without a status", "{ C = \"result\", P = \"left aside\" }");
    public static readonly Key<bool> TimesFromMessages = Table.Add("times_from_messages", Optional, Flag, "in read.specimens, where results are messages: whether collected_at and received_at come from them for rows without these times, and are compared for rows with them", "true");
    public static readonly TableKey Wide = Table.AddTables("wide", Optional, PartKeys.Table, "for a table with several results a row, such as a column a time point or an analyte: columns and constants of each, which go before those of all", "[{ columns = { result = \"aPTT 6 h\", tested_at = \"Time 6 h\" }, constants = { time_point = \"6 h\" } }]");
    public static readonly Key<ImmutableArray<string>> MoreFiles = Table.Add("more_files", Optional, ListOf(PlainNames.Form, "names"), "further files of the same form; lines of the second are counted from 5000001 on, and so on", "[\"results-march.csv\"]");
    // csharpier-ignore-end

    /// <summary>The same with the name of the file.</summary>
    public static class OfPairs
    {
        public static readonly Key<string> File = new(
            SectionKeys.File.Name,
            Required,
            PlainNames.Form,
            "name of the file",
            "\"pairs.csv\""
        );

        public static readonly KeyTable Table = SectionKeys.Table.Copy(
            File,
            Columns with
            {
                Example = "{ baseline_result = \"First\", delayed_result = \"Second\" }",
            },
            Wide with
            {
                Keys = PartKeys.OfPairs,
                Example =
                    "[{ columns = { delayed_result = \"aPTT 6 h\" }, constants = { time_point = \"6 h\" } }]",
            }
        );
    }

    /// <summary>The word for a place of units; null for the usual one.</summary>
    public static string? WordOf(UnitPlace place) =>
        place == UnitPlace.Column ? null : UnitPlaces.Write(place);

    /// <summary>The word for what an empty cell means.</summary>
    public static string? WordOf(EmptyCell? cell) =>
        cell is { } known ? EmptyCells.Write(known) : null;

    /// <summary>The word for which number is meant.</summary>
    public static string? WordOf(ShownNumber? number) =>
        number is { } known ? ShownNumbers.Write(known) : null;

    private static bool IsPattern(TomlTable table, Key key, string text) =>
        new TubePattern(text).IsSound
        || table.Refuse(
            key,
            FileQueries.UnknownWord,
            text,
            $"\"{text}\" does not say where specimen and tube stand.",
            "Write \"{specimen}-{tube}\" with the sign that stands between them, or \"{specimen}{letter}\" where a single letter or {digit} follows without a sign."
        );

    private static bool TellsTime(TomlTable table, Key key, string format)
    {
        string[] needed = ["d", "M", "mm"];
        bool Has(string part) => format.Contains(part, StringComparison.Ordinal);
        var years = format.Count(c => c == 'y');
        return (
                format.All(FormatSigns.Contains)
                && needed.All(Has)
                && (years == 4 ? Has("yyyy") : years == 2 && Has("yy"))
                && (!Has("z") || (Has("zzz") && format.Count(c => c == 'z') == 3))
                && (Has("h") ? Has("tt") && !Has("H") : Has("H") && !Has("t"))
            )
            || table.Refuse(
                key,
                FileQueries.UnknownWord,
                format,
                $"\"{format}\" does not say how times are written.",
                "Write it with dd, MM, yyyy, HH, mm and ss, such as \"dd.MM.yyyy HH:mm\", or with hh and tt for AM and PM, such as \"M/d/yyyy h:mm tt\"; for years of two digits write yy and give century."
            );
    }
}

/// <summary>The keys of each result of a row that has several.</summary>
internal static class PartKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly TableKey Columns = Table.AddTable("columns", Optional, KeyTable.Free, "as above, for this result alone", "{ result = \"aPTT 6 h\" }");
    public static readonly TableKey Constants = Table.AddTable("constants", Optional, KeyTable.Free, "as above, for this result alone", "{ time_point = \"6 h\" }");
    // csharpier-ignore-end

    /// <summary>The same where each row is a pair.</summary>
    public static readonly KeyTable OfPairs = Table.Copy(
        Columns with
        {
            Example = "{ delayed_result = \"aPTT 6 h\" }",
        }
    );
}
