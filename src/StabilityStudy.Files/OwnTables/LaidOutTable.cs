using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>
/// Reads a facility's own table, from a CSV file or a workbook, as study.toml describes it: where the header stands, what
/// comes before and behind the rows, blocks under a repeated header, and rows with several results.
/// </summary>
internal static class LaidOutTable
{
    /// <summary>Reads the rows; each result of a row is read as a row of its own.</summary>
    public static CsvReach Read(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        CsvRow row,
        QueryList queries,
        Action<CsvRow> read
    )
    {
        var form = layout.Form;
        var lostBefore = queries.CountOf(fileName, CsvFile.Losses);
        if (
            LinesOf(bytes, fileName, columns, layout, row.Known, queries)
            is not var (lines, preamble)
        )
        {
            return CsvReach.Nothing;
        }

        using var line = lines.GetEnumerator();
        var search = new HeaderSearch(columns, layout, row.Known);
        if (
            TableHeader.Read(line, fileName, columns, layout, search, preamble, queries)
            is not { } header
        )
        {
            return CsvReach.Nothing;
        }

        var parts = (layout.Parts.IsEmpty ? [TablePart.Whole] : layout.Parts)
            .Select(part =>
                MappedHeader.Match(
                    header,
                    fileName,
                    columns,
                    layout,
                    part,
                    search,
                    preamble,
                    queries
                )
                    is { } places
                    ? new LaidOutFields(layout, part, places, header.Names, header.Units)
                    : null
            )
            .ToArray();
        if (
            parts.Any(part => part is null)
            || HeaderSearch.FindsEarlier(preamble, form, fileName, queries)
        )
        {
            return CsvReach.Nothing;
        }

        var body = new TableBody(header, layout, columns, fileName, queries);
        var kinds = new DateKinds(header, fileName, queries);
        var times = TimesOf(columns, parts);
        var others = new OtherAnalytes(columns, layout, fileName, queries);
        foreach (var next in body.Rows(line))
        {
            kinds.Note(next, times);
            foreach (var fields in parts.OfType<LaidOutFields>())
            {
                fields.MoveTo(next);
                if (others.Has(fields))
                {
                    continue;
                }

                row.MoveTo(next.Number, fields);
                if (layout.Parts.IsEmpty || IsThere(fields, layout, row, columns))
                {
                    read(row);
                }
            }
        }

        kinds.Conclude();
        others.Conclude();
        return queries.CountOf(fileName, CsvFile.Losses) > lostBefore
            ? CsvReach.SomeRows
            : CsvReach.EveryRow;
    }

    private static ImmutableArray<(string, int)> TimesOf(
        CsvColumns columns,
        LaidOutFields?[] parts
    ) =>
        [
            .. from column in columns.All
            where column.Content == ColumnContent.Times
            from part in parts.OfType<LaidOutFields>()
            from place in part.PlacesOf(column.Name)
            select (column.Name, place),
        ];

    /// <summary>Whether a part of a row gives a result; an empty cell may mean three things, of which study.toml says one.</summary>
    private static bool IsThere(
        LaidOutFields fields,
        FileLayout layout,
        CsvRow row,
        CsvColumns columns
    )
    {
        fields.InPlaceOfResult = null;
        if (!fields.IsEmptyResult)
        {
            return true;
        }

        if (layout.Form.EmptyCell is not { } meaning)
        {
            row.Add(
                RowQueries.EmptyCellUnclear,
                columns.All.First(column => column.Name == fields.ResultColumn),
                "",
                "The cell is empty, and a table with several results a row does not show whether the tube gave no result, was not tested, or was never planned.",
                $"Write empty_cell = \"no result\", \"not tested\" or \"not planned\" under [read.{columns.Section}] in study.toml; where it is not the same everywhere, write NA, NT or the reason into the cells."
            );
            return false;
        }

        fields.InPlaceOfResult = meaning == EmptyCell.NotTested ? "NT" : null;

        // A time says that the tube was tested, whatever empty cells mean elsewhere.
        return meaning != EmptyCell.NotPlanned || !fields.HasNoTime;
    }

    private static (IEnumerable<TableLine> Lines, ImmutableArray<TableLine> Preamble)? LinesOf(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        KnownCodes known,
        QueryList queries
    )
    {
        var from = layout.Form.HeaderLine ?? 1;
        if (MessageFile.IsName(fileName))
        {
            return MessageFile.TextOf(bytes, layout, fileName, columns.Section, queries) is { } sent
                ? (
                    new MessageReading(
                        MessageSettings.Of(columns, layout, known),
                        fileName,
                        queries
                    ).Lines(sent),
                    []
                )
                : null;
        }

        MessageSettings.ReportForMessages(layout, fileName, columns.Section, queries);
        if (Workbook.IsName(fileName))
        {
            return
                Workbook.Read(bytes, layout.Form.Sheet, fileName, columns.Section, queries)
                    is { } sheet
                ? (
                    sheet.Where(line => line.Number >= from),
                    [.. sheet.Take(HeaderSearch.MostLines)]
                )
                : null;
        }

        if (CsvFile.TextOf(bytes, fileName, columns, queries) is not { } text)
        {
            return null;
        }

        // The lines before the header are of any form; what is wrong with them is nobody's fault.
        var preamble = DelimitedText
            .Lines(text, layout, 1, fileName, new QueryList())
            .Take(HeaderSearch.MostLines)
            .ToImmutableArray();
        return (DelimitedText.Lines(text, layout, from, fileName, queries), preamble);
    }
}
