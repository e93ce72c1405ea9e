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
            ],
            [
                .. from item in mapped
                where !item.Column.IsOfPersons
                from word in item.Words.OrderBy(word => word.Key, StringComparer.Ordinal)
                select new ReadWord(item.Column.Name, word.Key, word.Value),
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
            ]
        );
    }

    private static bool Tells(OwnFile file) =>
        file
            is { DateFormat: not null }
                or { HasDecimalComma: true }
                or { Headers.IsEmpty: false }
                or { Words.IsEmpty: false }
                or { Codes.IsEmpty: false }
                or { Constants.IsEmpty: false };
}
