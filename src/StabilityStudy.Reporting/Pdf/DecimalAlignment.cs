using System.Runtime.InteropServices;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>
/// Puts the decimal points of a column below each other. The widest part before and the widest part after the points
/// form a block that stands in the middle of the column.
/// </summary>
/// <param name="Before">Widest part before the point, in points.</param>
/// <param name="After">Widest part from the point on.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecimalAlignment(double Before, double After)
{
    /// <summary>Measures the numbers of a column.</summary>
    public static DecimalAlignment Of(Table table, int column, TextStyle style, double width)
    {
        var parts = table
            .Rows.Where(r => r.Kind == RowKind.Data)
            .Select(r => r.Cells[column])
            .Where(c => c.Shape is null && IsNumber(c.Text))
            .Select(c => Split(c.Text, CellText.StyleOf(c, style)))
            .Where(p => p.Before + p.After <= width)
            .ToImmutableArray();
        var block = new DecimalAlignment(
            parts.Select(p => p.Before).DefaultIfEmpty(0).Max(),
            parts.Select(p => p.After).DefaultIfEmpty(0).Max()
        );

        // If the block is wider than the column, the numbers are too unlike for one point: each stands in the middle.
        return block.Before + block.After > width ? default : block;
    }

    /// <summary>Left edge of a number's text, from the left edge of the column's text area.</summary>
    public double Left(string text, TextStyle style, double width)
    {
        if (Before + After <= 0 || !IsNumber(text))
        {
            return (width - style.Width(text)) / 2;
        }

        return ((width - Before - After) / 2) + Before - Split(text, style).Before;
    }

    private static bool IsNumber(string text) =>
        text.Length > 0
        && text.TrimStart('+', '-', '−', '±', '<', '>', '≤', '≥', ' ', '\u00A0', '\u2009')
            is [>= '0' and <= '9', ..];

    private static DecimalAlignment Split(string text, TextStyle style)
    {
        var digit = text.IndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']);
        var end = digit;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return new DecimalAlignment(style.Width(text[..end]), style.Width(text[end..]));
    }
}
