namespace StabilityStudy.Reporting.Pdf;

/// <summary>A row with all its cells set.</summary>
/// <param name="Cells">One cell a column, or a single one across all.</param>
/// <param name="Columns">Columns of the table.</param>
internal sealed record TableRow(ImmutableArray<CellText> Cells, TableColumns Columns)
{
    private const double Padding = 1.9;

    /// <summary>Distance of the first line to the upper edge.</summary>
    public double PaddingAbove { get; private init; } = Padding;

    /// <summary>Distance of the last line to the lower edge.</summary>
    public double PaddingBelow { get; private init; } = Padding;

    /// <summary>Number of text lines, at least one.</summary>
    public int LineCount => Math.Max(1, Cells.Max(c => c.Lines.Length));

    /// <summary>Height in points.</summary>
    public double Height => (LineCount * Columns.Style.Leading) + PaddingAbove + PaddingBelow;

    /// <summary>Some of the row's lines as a row of its own.</summary>
    public TableRow Part(int firstLine, int count) =>
        this with
        {
            Cells = [.. Cells.Select(c => c.Part(firstLine, count))],
            PaddingAbove = firstLine == 0 ? Padding : 0,
            PaddingBelow = firstLine + count >= LineCount ? Padding : 0,
        };
}
