using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>
/// Looks whether some times of a column are dates of the spreadsheet and others are texts. That is how a file of days before
/// months looks after a spreadsheet has opened it that expects months before days: what it could read is wrong.
/// </summary>
internal sealed class DateKinds(TableHeader header, string fileName, QueryList queries)
{
    private readonly Dictionary<int, (string Column, TableLine? Date, TableLine? Text)> _first = [];

    /// <summary>Looks at a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="columns">The columns of times and their places.</param>
    public void Note(TableLine line, ImmutableArray<(string Column, int Place)> columns)
    {
        foreach (var (column, place) in columns)
        {
            if (place >= line.Cells.Length || line.Cells[place] is not { IsEmpty: false } cell)
            {
                continue;
            }

            var (_, date, text) = _first.GetValueOrDefault(place);
            _first[place] = (
                column,
                date ?? (cell.IsDate ? line : null),
                text ?? (cell.Kind == CellKind.Text && cell.Text.Any(char.IsDigit) ? line : null)
            );
        }
    }

    /// <summary>Raises a query for each column of two kinds.</summary>
    public void Conclude()
    {
        foreach (var (place, (column, date, text)) in _first.OrderBy(item => item.Key))
        {
            if (date is not null && text is not null)
            {
                queries.Add(
                    RowQueries.DatesOfTwoKinds,
                    new QuerySource(fileName, text.Number, column),
                    text.TextAt(place),
                    FormattableString.Invariant(
                        $"The column \"{(place < header.Names.Length ? UnseenCharacters.Shown(header.Names[place]) : column)}\" has a date of the spreadsheet in row {date.Number} ({date.TextAt(place)}) and a text in row {text.Number}. A spreadsheet that expects the month first turns 02/03 into February and leaves 13/03 as it is."
                    )
                );
            }
        }
    }
}
