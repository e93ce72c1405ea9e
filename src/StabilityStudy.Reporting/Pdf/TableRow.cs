namespace StabilityStudy.Reporting.Pdf;

/// <summary>A row with all its cells set.</summary>
/// <param name="Cells">One cell a column, or a single one across all.</param>
/// <param name="Columns">Columns of the table.</param>
internal sealed record TableRow(ImmutableArray<CellText> Cells, TableColumns Columns)
{
    /// <summary>Distance of the first line to the upper edge.</summary>
    public double PaddingAbove { get; private init; } = Columns.RowPadding;

    /// <summary>Distance of the last line to the lower edge.</summary>
    public double PaddingBelow { get; private init; } = Columns.RowPadding;

    /// <summary>Number of text lines, at least one.</summary>
    public int LineCount => Math.Max(1, Cells.Max(c => c.Lines.Length));

    /// <summary>Height in points.</summary>
    public double Height => (LineCount * Columns.Style.Leading) + PaddingAbove + PaddingBelow;

    /// <summary>Some of the row's lines as a row of its own.</summary>
    public TableRow Part(int firstLine, int count) =>
        this with
        {
            Cells = [.. Cells.Select(c => c.Part(firstLine, count))],
            PaddingAbove = firstLine == 0 ? Columns.RowPadding : 0,
            PaddingBelow = firstLine + count >= LineCount ? Columns.RowPadding : 0,
        };
}
