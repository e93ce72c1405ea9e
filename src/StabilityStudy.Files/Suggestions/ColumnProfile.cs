using System.Text.RegularExpressions;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>A column of a delivered table: its header and what stands below it.</summary>
internal sealed partial class ColumnProfile
{
    private const int Milliseconds = 1000;
    private const double Most = 0.8;

    private ColumnProfile(int place, string header, string unit, ImmutableArray<TableCell> cells)
    {
        (Place, Header, Unit, Cells) = (place, header, unit, cells);
        Filled = [.. cells.Where(cell => cell.IsFilled)];
        Values =
        [
            .. Filled
                .GroupBy(cell => cell.Text.Trim(), StringComparer.Ordinal)
                .Select(group => (group.Key, group.Count()))
                .OrderByDescending(item => item.Item2)
                .ThenBy(item => item.Key, StringComparer.Ordinal),
        ];
    }

    /// <summary>Its place in the header.</summary>
    public int Place { get; }

    /// <summary>Its header.</summary>
    public string Header { get; }

    /// <summary>The unit that header or unit line states; empty where none.</summary>
    public string Unit { get; }

    /// <summary>Its cell in each row.</summary>
    public ImmutableArray<TableCell> Cells { get; }

    /// <summary>The cells in which something stands.</summary>
    public ImmutableArray<TableCell> Filled { get; }

    /// <summary>What stands in them without spaces around it, the most frequent first, with the number of rows.</summary>
    public ImmutableArray<(string Text, int Count)> Values { get; }

    /// <summary>Whether a text has spaces around it.</summary>
    public bool HasSpaces => Filled.Any(cell => cell.Text.Length != cell.Text.Trim().Length);

    /// <summary>Whether most of it is numbers.</summary>
    public bool IsNumeric => IsMostly(cell => !IsTime(cell) && IsNumber(cell));

    /// <summary>Whether most of it is dates or times of day.</summary>
    public bool IsTimes => IsMostly(IsTime);

    /// <summary>Whether most of it is times of day without a date.</summary>
    public bool IsClock =>
        IsMostly(cell => cell.Kind == CellKind.TimeOfDay || ClockForm().IsMatch(cell.Text.Trim()));

    /// <summary>The columns of a table.</summary>
    public static ImmutableArray<ColumnProfile> Of(TableShape shape)
    {
        var units = shape.Units is { } below
            ?
            [
                .. shape.Header.Names.Select(
                    (_, place) => below.TextAt(place).Trim().Trim('(', ')', '[', ']').Trim()
                ),
            ]
            : TableHeader.UnitsIn(shape.Header.Lines, TradeValues.IsUnit);
        return
        [
            .. shape.Header.Names.Select(
                (name, place) =>
                    new ColumnProfile(
                        place,
                        name,
                        units[place],
                        [
                            .. shape.Rows.Select(row =>
                                place < row.Cells.Length ? row.Cells[place] : new("")
                            ),
                        ]
                    )
            ),
        ];
    }

    /// <summary>The header as it is shown: one that may be a person's is not.</summary>
    public string Shown =>
        IdentityShape.Of(Header) is null || HeaderWords.Knows(Header)
            ? $"\"{Header}\""
            : FormattableString.Invariant($"column {Place + 1}");

    private bool IsMostly(Func<TableCell, bool> holds) =>
        !Filled.IsEmpty && Filled.Count(holds) >= Most * Filled.Length;

    /// <summary>Whether a cell holds a number, date or time, as a row does and a header does not.</summary>
    public static bool IsValue(TableCell cell) => IsNumber(cell) || IsTime(cell);

    private static bool IsNumber(TableCell cell) =>
        cell.Kind is CellKind.Number or CellKind.RoundedNumber or CellKind.DisguisedNumber
        || (cell.Kind == CellKind.Text && NumberForm().IsMatch(cell.Text.Trim()));

    private static bool IsTime(TableCell cell) =>
        cell.IsDate
        || cell.Kind == CellKind.TimeOfDay
        || (
            cell.Kind == CellKind.Text
            && (DateForm().IsMatch(cell.Text.Trim()) || ClockForm().IsMatch(cell.Text.Trim()))
        );

    [GeneratedRegex(
        @"^[<>]? ?[-+]?[0-9]+([.,'\u00A0 ][0-9]+)*$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex NumberForm();

    [GeneratedRegex(
        @"^([0-9]{1,4}(?<sign>[./-])[0-9]{1,2}\k<sign>[0-9]{1,4}|[0-9]{1,2}[ .-]?[A-Za-z]{3}[ .-]?[0-9]{2,4})([T ].*)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex DateForm();

    [GeneratedRegex(
        @"^[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?( ?[AaPp][Mm])?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex ClockForm();
}
