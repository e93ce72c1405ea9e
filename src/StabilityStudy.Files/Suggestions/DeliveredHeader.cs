using System.Globalization;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>The header of a delivered table: one line of names, or two of which the upper has titles over several columns.</summary>
/// <param name="Lines">Its lines.</param>
/// <param name="Names">The name of each column.</param>
/// <param name="Known">How many of its names are known.</param>
internal sealed record DeliveredHeader(
    ImmutableArray<TableLine> Lines,
    ImmutableArray<string> Names,
    int Known
)
{
    private const int FewestNames = 2;

    /// <summary>The line on which it begins.</summary>
    public TableLine First => Lines[0];

    /// <summary>The number of fields of a row.</summary>
    public int Width => First.Cells.Length;

    /// <summary>How many columns have a name.</summary>
    public int Filled => Names.Count(name => name.Length > 0);

    /// <summary>The header among the first lines: the one with the most known names; null where none has two.</summary>
    /// <param name="lines">The first lines, without empty ones.</param>
    /// <param name="isName">Whether a text is a known name of a column.</param>
    /// <param name="stated">What study.toml states of the file.</param>
    public static DeliveredHeader? Find(
        ImmutableArray<TableLine> lines,
        Func<string, bool> isName,
        StatedLayout stated
    )
    {
        if (stated.Number("header_line") is { } number)
        {
            return At(number, Math.Max(1, stated.Number("header_rows") ?? 1));
        }

        var found = lines
            .Select((_, i) => Of(lines, i, 1, isName))
            .Concat(
                lines
                    .Select((_, i) => Of(lines, i, 2, isName))
                    .Where(header =>
                        header is { Lines: [var upper, var lower] } && IsTwo(upper, lower, header)
                    )
            )
            .OfType<DeliveredHeader>()
            .Where(header => header.Known >= FewestNames)
            .OrderByDescending(header => header.Known)
            .ThenByDescending(header => header.Lines.Length)
            .ThenBy(header => header.First.Number)
            .FirstOrDefault();
        return found;

        DeliveredHeader? At(int line, int rows) =>
            lines.IndexOf(lines.FirstOrDefault(item => item.Number == line)!) is >= 0 and var place
                ? Of(lines, place, rows, isName)
                : null;
    }

    private static DeliveredHeader? Of(
        ImmutableArray<TableLine> lines,
        int place,
        int rows,
        Func<string, bool> isName
    )
    {
        if (place + rows > lines.Length)
        {
            return null;
        }

        ImmutableArray<TableLine> taken = [.. lines.Skip(place).Take(rows)];
        var names = TableHeader.NamesOf(taken);
        return new(taken, names, names.Count(name => name.Length > 0 && isName(name)));
    }

    /// <summary>
    /// Whether each of two lines needs the other to name the columns: in the upper names are missing or stand twice, and in the lower too. Neither is a row,
    /// a line of units, or a title of the whole table.
    /// </summary>
    private static bool IsTwo(TableLine upper, TableLine lower, DeliveredHeader both) =>
        both.Names.Where(name => name.Length > 0).Distinct(StringComparer.Ordinal).Count()
            == both.Filled
        && !TableShape.IsUnits(lower)
        && !HasValues(upper)
        && !HasValues(lower)
        && upper.Cells.Skip(1).Any(cell => cell.IsFilled)
        && IsIncomplete(upper, lower)
        && IsIncomplete(lower, upper);

    private static bool IsIncomplete(TableLine line, TableLine other)
    {
        string[] names =
        [
            .. line.Cells.Where(cell => cell.IsFilled).Select(cell => cell.Text.Trim()),
        ];
        return names.Length > names.Distinct(StringComparer.Ordinal).Count()
            || Enumerable
                .Range(0, other.Cells.Length)
                .Any(i => other.TextAt(i).Trim().Length > 0 && line.TextAt(i).Trim().Length == 0);
    }

    private static bool HasValues(TableLine line) =>
        line.Cells.Any(cell => cell.IsFilled && ColumnProfile.IsValue(cell));
}
