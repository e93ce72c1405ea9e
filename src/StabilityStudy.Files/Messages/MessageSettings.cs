using System.Collections.Frozen;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Messages;

/// <summary>What study.toml and the protocol say of a file of messages.</summary>
/// <param name="Encoding">How characters are stored in messages that do not state it.</param>
/// <param name="Zone">The zone of times; null where none is named.</param>
/// <param name="Statuses">What becomes of results that are not final.</param>
/// <param name="Wanted">The columns that are read into the study; others are left empty.</param>
/// <param name="IsKnownWord">Whether words are known as a result.</param>
internal sealed record MessageSettings(
    FileEncoding Encoding,
    TimeZoneInfo? Zone,
    FrozenDictionary<string, StatusMeaning> Statuses,
    FrozenSet<string> Wanted,
    Func<string, bool> IsKnownWord
)
{
    /// <summary>Gathers them.</summary>
    public static MessageSettings Of(CsvColumns columns, FileLayout layout, KnownCodes known) =>
        new(
            layout.Encoding,
            layout.ZoneRules ?? known.Times.Zone,
            layout.Statuses,
            columns
                .Names.SelectMany(name => layout.HeadersOf(name))
                .Where(MessageColumns.Names.Contains)
                .ToFrozenSet(StringComparer.Ordinal),
            text =>
                layout.WordFor("result", text) is not null
                || known.AnalyteById.Values.Any(analyte =>
                    analyte.Categories.Contains(text, StringComparer.OrdinalIgnoreCase)
                )
        );

    /// <summary>Raises a query for settings that describe messages, where the file holds none.</summary>
    public static void ReportForMessages(
        FileLayout layout,
        string fileName,
        string section,
        QueryList queries
    )
    {
        if (layout.Statuses.Count > 0)
        {
            queries.Add(
                MessageQueries.SettingWithoutUse,
                new QuerySource(fileName, null, null),
                "result_status",
                $"The file is a table, and result_status under [read.{section}] of study.toml describes messages."
            );
        }
    }

    /// <summary>Raises a query for settings that describe tables.</summary>
    public static void ReportUnused(
        FileLayout layout,
        string fileName,
        string section,
        QueryList queries
    )
    {
        var form = layout.Form;
        (string Key, bool IsGiven)[] ofTables =
        [
            ("sheet", form.Sheet is not null),
            ("header_line", form.HeaderLine is not null),
            ("header_rows", form.HeaderRows > 1),
            ("footer_lines", form.FooterLines > 0),
            ("header_repeats", form.HeaderRepeats),
            ("units", form.Units != Tables.UnitPlace.Column),
            ("empty_cell", form.EmptyCell is not null),
            ("numbers", form.Numbers is not null),
            ("delimiter", layout.Delimiter != ','),
            ("date_format", layout.DateFormat is not null),
            ("wide", !layout.Parts.IsEmpty),
        ];
        var given = ofTables.Where(item => item.IsGiven).Select(item => item.Key).ToArray();
        if (given.Length > 0)
        {
            queries.Add(
                MessageQueries.SettingWithoutUse,
                new QuerySource(fileName, null, null),
                string.Join(", ", given),
                $"The file holds messages, and {string.Join(", ", given)} under [read.{section}] of study.toml describe{(given.Length == 1 ? "s" : "")} a table."
            );
        }
    }
}
