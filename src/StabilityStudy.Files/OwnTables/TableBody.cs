using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>The rows below a header: without the footer, without headers that stand again, and without the titles of further blocks.</summary>
internal sealed class TableBody(
    TableHeader header,
    FileLayout layout,
    CsvColumns columns,
    string fileName,
    QueryList queries
)
{
    private readonly TableForm _form = layout.Form;
    private readonly string _firstName = header
        .First.Cells.Select(cell => cell.Text.Trim())
        .FirstOrDefault(name => name.Length > 0, "");
    private readonly bool _isWorkbook = Workbook.IsName(fileName);
    private readonly List<TableLine> _titles = [];

    /// <summary>The rows, in the order of the file.</summary>
    public IEnumerable<TableLine> Rows(IEnumerator<TableLine> lines)
    {
        var waiting = new Queue<TableLine>();
        while (TableHeader.Next(lines))
        {
            waiting.Enqueue(lines.Current);
            while (waiting.Count > _form.FooterLines)
            {
                foreach (var row in Take(waiting.Dequeue()))
                {
                    yield return row;
                }
            }
        }

        foreach (var row in TakeTitles())
        {
            yield return row;
        }

        CheckFooter(waiting);
    }

    private int _headerLine;
    private int _before = header.Lines[^1].Number;

    private IEnumerable<TableLine> Take(TableLine line)
    {
        var isApart = line.Number > _before + 1;
        _before = line.Number;
        if (_headerLine > 0)
        {
            // The lines below a repeated header are the same as below the first, or rows would be lost.
            var expected = header.Lines[_headerLine];
            _headerLine = (_headerLine + 1) % header.Lines.Length;
            if (HeaderSearch.IsSame(line, expected))
            {
                return [];
            }

            ReportChange(line);
            _headerLine = 0;
            return [];
        }

        if (HeaderSearch.IsSame(line, header.First))
        {
            _titles.Clear();
            _headerLine = 1 % header.Lines.Length;
            return [];
        }

        if (IsOtherHeader(line))
        {
            ReportChange(line);
            return [];
        }

        if (_form.HeaderRepeats && IsTitle(line, isApart))
        {
            _titles.Add(line);
            return [];
        }

        return [.. TakeTitles(), .. IsWhole(line) ? [line] : ImmutableArray<TableLine>.Empty];
    }

    private void ReportChange(TableLine line) =>
        queries.Add(
            CsvQueries.HeaderChanges,
            new QuerySource(fileName, line.Number, null),
            "",
            FormattableString.Invariant(
                $"The header stands again here in another form than on line {header.Line}, so that the rows below may have other columns or units."
            ),
            "Put each block into a file of its own and name them in more_files, or bring the blocks into one form."
        );

    private ImmutableArray<TableLine> TakeTitles()
    {
        ImmutableArray<TableLine> taken = [.. _titles.Where(IsWhole)];
        _titles.Clear();
        return taken;
    }

    private bool IsWhole(TableLine line)
    {
        if (_isWorkbook || line.Cells.Length == header.First.Cells.Length)
        {
            return true;
        }

        CsvFile.ReportFieldCount(
            [.. line.Cells.Select(cell => cell.Text)],
            header.First.Cells.Length,
            columns
                .Names.Select(name => (Name: name, Place: PlaceOf(name)))
                .Where(column => column.Place >= 0)
                .ToDictionary(column => column.Name, column => column.Place),
            fileName,
            columns,
            line.Number,
            layout.Delimiter,
            queries
        );
        return false;
    }

    private int PlaceOf(string column) => header.Names.IndexOf(layout.HeadersOf(column)[0]);

    // A title over a further block stands alone in its line, which has too few fields for a row or stands apart from the rows.
    private bool IsTitle(TableLine line, bool isApart) =>
        line.Cells.Count(cell => cell.IsFilled) == 1
        && (line.Cells.Length < header.First.Cells.Length || isApart || _titles.Count > 0);

    private bool IsOtherHeader(TableLine line)
    {
        if (!Array.Exists(line.Cells, cell => cell.Text.AsSpan().Trim().SequenceEqual(_firstName)))
        {
            return false;
        }

        var names = header.First.Cells.Select(cell => cell.Text.Trim()).Where(n => n.Length > 0);
        var here = line.Cells.Select(cell => (cell.Text ?? "").Trim()).ToHashSet();
        var count = names.Count();
        return count > 1 && names.All(here.Contains);
    }

    private void CheckFooter(Queue<TableLine> footer)
    {
        foreach (var line in footer)
        {
            var filled = line.Cells.Count(cell => !cell.IsEmpty);
            var usual = header.First.Cells.Count(cell => !cell.IsEmpty);
            if (line.Cells.Length == header.First.Cells.Length && filled > 1 && 2 * filled > usual)
            {
                queries.Add(
                    CsvQueries.FooterLooksLikeRow,
                    new QuerySource(fileName, line.Number, null),
                    "",
                    FormattableString.Invariant(
                        $"The line belongs to the {_form.FooterLines} that study.toml leaves out at the end, and it is filled in like a row."
                    ),
                    $"Correct footer_lines under [read.{columns.Section}] in study.toml, or take the line out of the file if it is no row."
                );
            }
        }
    }
}
