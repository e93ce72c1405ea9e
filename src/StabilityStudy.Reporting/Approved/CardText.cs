using PdfSharp.Drawing;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Approved;

/// <summary>Type of the bench card. At 70 cm the window is legible to anyone who reads 9 pt at 30 cm with room to spare.</summary>
internal static class CardText
{
    public const double FigureSize = 15;

    public static readonly TextStyle Title = new(ReportFonts.Semibold, 21, 26, TextStyle.Accent);
    public static readonly TextStyle Head = new(ReportFonts.Regular, 10, 13, TextStyle.Ink);
    public static readonly TextStyle Group = new(ReportFonts.Semibold, 18, 21, TextStyle.Ink);
    public static readonly TextStyle Window = new(ReportFonts.Semibold, 37, 38, TextStyle.Ink);
    public static readonly TextStyle Cell = new(ReportFonts.Regular, 13, 17, TextStyle.Ink);
    public static readonly TextStyle Comment = new(ReportFonts.Regular, 11.5, 15, TextStyle.Ink);
    public static readonly TextStyle Source = new(ReportFonts.Regular, 8.5, 11.2, TextStyle.Ink);

    /// <summary>The same on a black band.</summary>
    public static TextStyle On(TextStyle style, bool isBlack) =>
        isBlack ? style with { Color = XColors.White } : style;
}

/// <summary>The columns of the card: whose, how old, spin by, never, what to report.</summary>
/// <param name="Left">Left edge of the live area.</param>
/// <param name="Width">Its width.</param>
internal sealed record CardColumns(double Left, double Width)
{
    // Shares of the width, from the left.
    private static readonly double[] s_from = [0, 0.247, 0.418, 0.612, 0.789];
    private static readonly string[] s_heads =
    [
        "Patient",
        "Accept until it is this old",
        "Spin by",
        "Never",
        "Too old: do not test; report this",
    ];
    private static readonly double s_gap = Mm(4);

    /// <summary>Where a column begins.</summary>
    public double From(int column) => Left + (s_from[column] * Width);

    /// <summary>Width of its text.</summary>
    public double Room(int column) =>
        ((column + 1 < s_from.Length ? s_from[column + 1] : 1) - s_from[column]) * Width
        - (column + 1 < s_from.Length ? s_gap : 0);

    /// <summary>Draws the heads.</summary>
    public void DrawHeads(PageCanvas canvas, double top)
    {
        foreach (var (i, head) in s_heads.Index())
        {
            canvas.TaggedHead(
                "Column",
                1,
                () => canvas.Text(head + " ", CardText.Head, From(i), top)
            );
        }
    }
}
