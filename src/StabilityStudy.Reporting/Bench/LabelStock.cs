using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>On what labels are printed, in millimeters.</summary>
/// <param name="Columns">Labels beside each other; 1 for single labels.</param>
/// <param name="Rows">Labels below each other; 1 for single labels.</param>
/// <param name="Width">Width of a label.</param>
/// <param name="Height">Height of a label.</param>
/// <param name="Left">From the left edge of the sheet to the first label.</param>
/// <param name="Top">From the upper edge of the sheet to the first label.</param>
/// <param name="GapAcross">Between labels beside each other.</param>
/// <param name="GapDown">Between labels below each other.</param>
/// <param name="FirstLabel">The first label of the first sheet that is still there, from 1, line by line.</param>
public sealed record LabelStock(
    int Columns,
    int Rows,
    double Width,
    double Height,
    double Left,
    double Top,
    double GapAcross,
    double GapDown,
    int FirstLabel
)
{
    /// <summary>Whether each label is a page of its own.</summary>
    public bool IsSingle { get; init; }

    /// <summary>Labels of a sheet.</summary>
    public int PerSheet => Columns * Rows;

    /// <summary>Width of all columns with their gaps.</summary>
    public double AllAcross => (Columns * Width) + ((Columns - 1) * GapAcross);

    /// <summary>Height of all rows with their gaps.</summary>
    public double AllDown => (Rows * Height) + ((Rows - 1) * GapDown);

    /// <summary>Labels on a roll: one a page.</summary>
    public static LabelStock OneByOne(double width, double height) =>
        new(1, 1, width, height, 0, 0, 0, 0, 1) { IsSingle = true };

    /// <summary>A sheet of 4 × 12 labels of 45.7 × 21.2 mm in the middle of the paper: a common size. What lies in the printer is to be measured.</summary>
    public static LabelStock Usual(PaperSize paper)
    {
        var (width, height) = PaperOf(paper);
        var stock = new LabelStock(4, 12, 45.7, 21.2, 0, 0, 2.5, 0, 1);
        return stock with
        {
            Left = Math.Round((width - stock.AllAcross) / 2, 2),
            Top = Math.Round((height - stock.AllDown) / 2, 2),
        };
    }

    /// <summary>What does not fit together; null where all fits on the paper.</summary>
    public string? Fault(PaperSize paper)
    {
        var (width, height) = PaperOf(paper);
        const double rounding = 0.05;
        return Columns < 1 || Rows < 1 || Width <= 0 || Height <= 0
                ? "a sheet has at least one label, which has a width and a height"
            : Left < 0 || Top < 0 || GapAcross < 0 || GapDown < 0
                ? "margins and gaps are not below zero"
            : !IsSingle && Left + AllAcross > width + rounding
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"margin and columns take {Left + AllAcross:0.##} mm, and the paper is {width:0.#} mm wide"
                )
            : !IsSingle && Top + AllDown > height + rounding
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"margin and rows take {Top + AllDown:0.##} mm, and the paper is {height:0.#} mm high"
                )
            : FirstLabel < 1 || FirstLabel > PerSheet
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"the first label is one of 1 to {PerSheet}"
                )
            : null;
    }

    private static (double Width, double Height) PaperOf(PaperSize paper)
    {
        var frame = PageFrame.Of(paper);
        return (PageFrame.ToMillimeters(frame.Width), PageFrame.ToMillimeters(frame.Height));
    }
}
