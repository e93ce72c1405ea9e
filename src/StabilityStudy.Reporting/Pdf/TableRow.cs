using System.Collections.Immutable;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>A row with all its cells set.</summary>
/// <param name="Cells">One cell a column, or a single one across all.</param>
/// <param name="Columns">Columns of the table.</param>
/// <param name="Padding">Distance of the texts to the edges of the row.</param>
internal sealed record TableRow(
    ImmutableArray<CellText> Cells,
    TableColumns Columns,
    double Padding
)
{
    /// <summary>Number of text lines, at least one.</summary>
    public int LineCount => Math.Max(1, Cells.Max(c => c.Lines.Length));

    /// <summary>Height in points.</summary>
    public double Height => (LineCount * Columns.Style.Leading) + (2 * Padding);

    /// <summary>Some of the row's lines as a row of its own.</summary>
    public TableRow Part(int firstLine, int count) =>
        this with
        {
            Cells = [.. Cells.Select(c => c.Part(firstLine, count))],
        };
}
