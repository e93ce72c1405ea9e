using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Where a table stands among the lines of its file.</summary>
/// <param name="Header">The line of the header.</param>
/// <param name="Names">How many of its names are known.</param>
/// <param name="IsFirst">Whether it is the first line on which something stands.</param>
/// <param name="Units">The line of units below it; null where none is.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Footer">The lines behind the rows.</param>
/// <param name="Repeats">How often the header stands again.</param>
/// <param name="Titles">Lines of a single field above such a header.</param>
/// <param name="Others">How many lines among the rows have another number of fields.</param>
internal sealed record TableShape(
    TableLine Header,
    int Names,
    bool IsFirst,
    TableLine? Units,
    ImmutableArray<TableLine> Rows,
    ImmutableArray<TableLine> Footer,
    int Repeats,
    int Titles,
    int Others
)
{
    private const int FewestNames = 2;
    private const int MostFooterLines = 40;

    /// <summary>The number of fields of a row.</summary>
    public int Width => Header.Cells.Length;

    /// <summary>The header among the first lines: the one with the most known names; null where none has two.</summary>
    /// <param name="lines">The first lines.</param>
    /// <param name="isName">Whether a text is a known name of a column.</param>
    public static TableLine? FindHeader(
        ImmutableArray<TableLine> lines,
        Func<string, bool> isName
    ) =>
        lines
            .Select(line => (Line: line, Count: CountOf(line, isName)))
            .Where(item => item.Count >= FewestNames)
            .OrderByDescending(item => item.Count)
            .Select(item => item.Line)
            .FirstOrDefault();

    /// <summary>How many fields of a line are names.</summary>
    public static int CountOf(TableLine line, Func<string, bool> isName) =>
        line.Cells.Count(cell => !cell.IsEmpty && isName(cell.Text.Trim()));

    /// <summary>The shape of the lines from the header on.</summary>
    /// <param name="lines">The lines from the header on.</param>
    /// <param name="names">How many of its names are known.</param>
    /// <param name="isFirst">Whether nothing stands before it.</param>
    /// <param name="isWorkbook">Whether every line has the same number of cells, whatever stands in it.</param>
    public static TableShape Of(
        ImmutableArray<TableLine> lines,
        int names,
        bool isFirst,
        bool isWorkbook
    )
    {
        var header = lines[0];
        ImmutableArray<TableLine> below = [.. lines.Skip(1).Where(line => !line.IsEmpty)];
        var units = below is [var first, ..] && IsUnits(first) ? first : null;
        var filled = header.Cells.Count(cell => !cell.IsEmpty);
        var last = below.Length;
        while (
            last > 0
            && below.Length - last < MostFooterLines
            && IsApart(below[last - 1], header, filled, isWorkbook)
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
            if (HeaderSearch.IsSame(line, header))
            {
                repeats++;
                titles += waiting.Count;
                waiting.Clear();
            }
            else if (units is not null && HeaderSearch.IsSame(line, units))
            {
                continue;
            }
            else if (line.Cells.Count(cell => !cell.IsEmpty) == 1 && filled > 1)
            {
                waiting.Add(line);
            }
            else
            {
                others +=
                    waiting.Count
                    + (isWorkbook || line.Cells.Length == header.Cells.Length ? 0 : 1);
                rows.AddRange(waiting.Where(item => item.Cells.Length == header.Cells.Length));
                waiting.Clear();
                if (isWorkbook || line.Cells.Length == header.Cells.Length)
                {
                    rows.Add(line);
                }
            }
        }

        return new(
            header,
            names,
            isFirst,
            units,
            rows.ToImmutable(),
            footer,
            repeats,
            titles,
            others
        );
    }

    // A line of units has only units, and at least one.
    private static bool IsUnits(TableLine line) =>
        !line.IsEmpty
        && line.Cells.All(cell =>
            cell.IsEmpty || TradeValues.IsUnit(cell.Text.Trim().Trim('(', ')', '[', ']').Trim())
        );

    private static bool IsApart(TableLine line, TableLine header, int filled, bool isWorkbook) =>
        (!isWorkbook && line.Cells.Length != header.Cells.Length)
        || (filled > 2 && line.Cells.Count(cell => !cell.IsEmpty) == 1);
}
