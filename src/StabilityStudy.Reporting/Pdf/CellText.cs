using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>The text of one cell, broken into lines that have their places.</summary>
/// <param name="Lines">Lines that the font can draw.</param>
/// <param name="Offsets">Left edge of each line, from the left edge of the column.</param>
/// <param name="Style">Font and size.</param>
/// <param name="Shape">Shape in front of the first line, if any.</param>
internal sealed record CellText(
    ImmutableArray<string> Lines,
    ImmutableArray<double> Offsets,
    TextStyle Style,
    VerdictShape? Shape
)
{
    /// <summary>The style of a cell in a table of the given style.</summary>
    public static TextStyle StyleOf(TableCell cell, TextStyle table) =>
        cell.Emphasis switch
        {
            Emphasis.Strong => table with { Face = ReportFonts.Semibold },
            Emphasis.Muted => table with { Face = ReportFonts.Italic, Color = TextStyle.Soft },
            Emphasis.None => table,
        };

    /// <summary>Sets a cell into a column.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="alignment">Where its lines stand.</param>
    /// <param name="decimals">Where the decimal point of the column stands.</param>
    /// <param name="style">Its style.</param>
    /// <param name="width">Width for the text, the shape not included.</param>
    /// <param name="shapeWidth">Width of a shape and its distance to the text.</param>
    public static CellText Set(
        TableCell cell,
        ColumnAlignment alignment,
        DecimalAlignment decimals,
        TextStyle style,
        double width,
        double shapeWidth
    )
    {
        var indent = TableColumns.Padding + (cell.Shape is null ? 0 : shapeWidth);
        var lines = LineBreaking.Break(cell.Text, style, width);
        var offsets = lines.Select(line =>
        {
            var slack = width - style.Width(line);
            return indent
                + alignment switch
                {
                    ColumnAlignment.Right => slack,
                    ColumnAlignment.Center => slack / 2,
                    ColumnAlignment.DecimalPoint when lines.Length == 1 => decimals.Left(
                        line,
                        style,
                        width
                    ),
                    ColumnAlignment.DecimalPoint => slack / 2,
                    ColumnAlignment.Left => 0,
                };
        });
        return new CellText(lines, [.. offsets], style, cell.Shape);
    }

    /// <summary>The part of the cell that stands on some of the row's lines.</summary>
    public CellText Part(int firstLine, int count)
    {
        var from = Math.Min(firstLine, Lines.Length);
        var to = Math.Min(firstLine + count, Lines.Length);
        return new CellText(Lines[from..to], Offsets[from..to], Style, from == 0 ? Shape : null);
    }
}
