using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Where a table stands among the lines of its file.</summary>
/// <param name="Header">The header.</param>
/// <param name="IsFirst">Whether it is the first line on which something stands.</param>
/// <param name="Units">The line of units below it; null where none is.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Footer">The lines behind the rows.</param>
/// <param name="Repeats">How often the header stands again.</param>
/// <param name="Titles">Lines of a single field above such a header.</param>
/// <param name="Others">How many lines among the rows have another number of fields.</param>
internal sealed record TableShape(
    DeliveredHeader Header,
    bool IsFirst,
    TableLine? Units,
    ImmutableArray<TableLine> Rows,
    ImmutableArray<TableLine> Footer,
    int Repeats,
    int Titles,
    int Others
)
{
    private static readonly System.Buffers.SearchValues<char> s_ofTimes =
        System.Buffers.SearchValues.Create("dmyhsDMYHS.:/- ");

    private const int MostFooterLines = 40;

    /// <summary>The shape of the lines from the header on.</summary>
    /// <param name="header">The header.</param>
    /// <param name="lines">The lines of the file.</param>
    /// <param name="isFirst">Whether nothing stands before it.</param>
    /// <param name="isWorkbook">Whether every line has the same number of cells, whatever stands in it.</param>
    public static TableShape Of(
        DeliveredHeader header,
        IEnumerable<TableLine> lines,
        bool isFirst,
        bool isWorkbook
    )
    {
        ImmutableArray<TableLine> below =
        [
            .. lines.Where(line => line.Number > header.Lines[^1].Number && !line.IsEmpty),
        ];
        var units = below is [var first, ..] && IsUnits(first) ? first : null;
        var last = below.Length;
        while (
            last > 0
            && below.Length - last < MostFooterLines
            && IsApart(below[last - 1], header, isWorkbook)
        )
        {
            last--;
        }

        // A table of which no line is a row has no footer either.
        ImmutableArray<TableLine> footer = last == 0 ? [] : [.. below.Skip(last)];
        var rows = ImmutableArray.CreateBuilder<TableLine>();
        var waiting = new List<TableLine>();
        var (repeats, titles, others) = (0, 0, 0);
        foreach (var line in below.Take(below.Length - footer.Length))
        {
            if (HeaderSearch.IsSame(line, header.First))
            {
                repeats++;
                titles += waiting.Count;
                waiting.Clear();
            }
            else if (
                header.Lines.Skip(1).Any(lower => HeaderSearch.IsSame(line, lower))
                || (units is not null && HeaderSearch.IsSame(line, units))
            )
            {
                continue;
            }
            else if (line.Cells.Count(cell => cell.IsFilled) == 1 && header.Filled > 1)
            {
                waiting.Add(line);
            }
            else
            {
                others += waiting.Count + (isWorkbook || line.Cells.Length == header.Width ? 0 : 1);
                rows.AddRange(waiting.Where(item => item.Cells.Length == header.Width));
                waiting.Clear();
                if (isWorkbook || line.Cells.Length == header.Width)
                {
                    rows.Add(line);
                }
            }
        }

        return new(header, isFirst, units, rows.ToImmutable(), footer, repeats, titles, others);
    }

    /// <summary>Whether a line has only units, and at least one; beside them the form of dates and times may be told.</summary>
    public static bool IsUnits(TableLine line)
    {
        string[] texts =
        [
            .. line
                .Cells.Where(cell => cell.IsFilled)
                .Select(cell => cell.Text.Trim().Trim('(', ')', '[', ']').Trim()),
        ];
        return texts.Any(TradeValues.IsUnit)
            && texts.All(text => TradeValues.IsUnit(text) || IsFormOfTime(text));
    }

    // "dd.mm.yyyy hh:mm"
    private static bool IsFormOfTime(string text) =>
        text.Contains("mm", StringComparison.OrdinalIgnoreCase)
        && !text.AsSpan().ContainsAnyExcept(s_ofTimes);

    private static bool IsApart(TableLine line, DeliveredHeader header, bool isWorkbook) =>
        (!isWorkbook && line.Cells.Length != header.Width)
        || (header.Filled > 2 && line.Cells.Count(cell => cell.IsFilled) == 1);
}
