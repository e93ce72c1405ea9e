using StabilityStudy.Core.Study;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Layouts;

/// <summary>
/// What study.toml maps of the laboratory's own files, as a report tells it. It follows from study.toml alone, whatever form
/// the data files have that are read, so that it is found again from the files in a report.
/// </summary>
internal static class OwnFiles
{
    /// <summary>How a file was read; null where study.toml states nothing that changes what its fields mean.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="columns">Its columns with their layout.</param>
    public static OwnFile? Of(string name, CsvColumns columns) =>
        columns.Layout is { } layout && Of(name, layout, columns.All) is var file && Tells(file)
            ? file
            : null;

    private static OwnFile Of(string name, FileLayout layout, ImmutableArray<Column> columns)
    {
        var mapped =
            from column in columns
            where layout.Values.ContainsKey(column.Name)
            select (Column: column, Words: layout.Values[column.Name]);
        return new(
            name,
            layout.DateFormat,
            layout.HasDecimalComma,
            [
                .. from column in columns
                let header = layout.HeaderOf(column.Name)
                where header != column.Name
                select new ReadHeader(column.Name, header),
                .. from part in layout.Parts
                from column in columns
                where part.Columns.ContainsKey(column.Name)
                select new ReadHeader(column.Name, string.Join(" and ", part.Columns[column.Name])),
            ],
            [
                .. from item in mapped
                where !item.Column.IsOfPersons
                from word in item.Words.OrderBy(word => word.Key, StringComparer.Ordinal)
                select new ReadWord(item.Column.Name, word.Key, word.Value),
                .. from flag in layout.Flags.OrderBy(flag => flag.Key, StringComparer.Ordinal)
                select new ReadWord("flag", flag.Key, FileWords.FlagMeanings.Write(flag.Value)),
                .. from unit in layout.Conversions.OrderBy(unit => unit.Key, StringComparer.Ordinal)
                select new ReadWord("unit", unit.Key, unit.Value.To + ReadWord.Converted),
                .. from status in layout.Statuses.OrderBy(s => s.Key, StringComparer.Ordinal)
                select new ReadWord(
                    "result status",
                    status.Key,
                    FileWords.StatusMeanings.Write(status.Value)
                ),
                .. from tube in layout.TimePointOfTube.OrderBy(t => t.Key, StringComparer.Ordinal)
                select new ReadWord("time_point", $"tube {tube.Key}", tube.Value),
            ],
            [
                .. from item in mapped
                where item.Column.IsOfPersons && item.Words.Count > 0
                select new ReplacedCodes(item.Column.Name, item.Words.Count),
            ],
            [
                .. from column in columns
                where layout.Constants.ContainsKey(column.Name)
                select new StatedConstant(column.Name, layout.Constants[column.Name]),
                .. from part in layout.Parts
                from column in columns
                where part.Constants.ContainsKey(column.Name)
                select new StatedConstant(column.Name, part.Constants[column.Name]),
            ]
        )
        {
            Settings = [.. Settings(layout)],
        };
    }

    private static IEnumerable<ReadSetting> Settings(FileLayout layout)
    {
        var form = layout.Form;
        (Key Key, string? Value)[] all =
        [
            (SectionKeys.Sheet, form.Sheet),
            (SectionKeys.HeaderLine, Number(form.HeaderLine)),
            (SectionKeys.HeaderRows, form.HeaderRows > 1 ? Number(form.HeaderRows) : null),
            (SectionKeys.FooterLines, form.FooterLines > 0 ? Number(form.FooterLines) : null),
            (SectionKeys.Units, SectionKeys.WordOf(form.Units)),
            (SectionKeys.EmptyCell, SectionKeys.WordOf(form.EmptyCell)),
            (SectionKeys.Numbers, SectionKeys.WordOf(form.Numbers)),
            (SectionKeys.Century, Number(layout.Century)),
            (SectionKeys.TimeZone, layout.ZoneName),
            (SectionKeys.TubePattern, layout.TubePattern?.Text),
            (SectionKeys.WholeCode, layout.KeepsWholeCode ? "true" : null),
            (SectionKeys.TimesFromMessages, layout.TimesFromMessages ? "true" : null),
            (SectionKeys.OtherAnalytes, Listed(layout.OtherAnalytes)),
            (SectionKeys.MoreFiles, Listed(layout.MoreFiles)),
        ];
        return all.Where(item => item.Value is not null)
            .Select(item => new ReadSetting(item.Key.Name, item.Value!));

        static string? Listed(ImmutableArray<string> names) =>
            names.IsEmpty ? null : string.Join(", ", names);

        static string? Number(int? number) => number?.ToString(CultureInfo.InvariantCulture);
    }

    private static bool Tells(OwnFile file) =>
        file
            is { DateFormat: not null }
                or { HasDecimalComma: true }
                or { Headers.IsEmpty: false }
                or { Words.IsEmpty: false }
                or { Codes.IsEmpty: false }
                or { Constants.IsEmpty: false }
                or { Settings.IsEmpty: false };
}
