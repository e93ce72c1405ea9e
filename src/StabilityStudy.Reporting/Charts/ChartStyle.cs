using ScottPlot;
using SkiaSharp;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;
using MarkerShape = StabilityStudy.Reporting.Model.MarkerShape;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Sizes, colors and dashes of all charts.</summary>
internal static class ChartStyle
{
    public static readonly TextStyle Title = Text(ReportFonts.Semibold, 8, 10.4);
    public static readonly TextStyle AxisLabel = Text(ReportFonts.Regular, 7.4, 9.6);
    public static readonly TextStyle Tick = Text(ReportFonts.Regular, 7, 9);
    public static readonly TextStyle Name = Text(ReportFonts.Regular, 6.8, 8.2);

    public static readonly Color Ink = new(0x1A, 0x1C, 0x20);
    public static readonly Color Accent = new(0x1D, 0x44, 0x66);
    public static readonly Color BandGray = new(0xDD, 0xE1, 0xE6);
    public static readonly Color HatchGray = new(0x8A, 0x93, 0x9E);
    public static readonly Color TrajectoryGray = new(0xA9, 0xB0, 0xB8);

    /// <summary>Radius of a marker in points.</summary>
    public const float MarkerRadius = 2.3f;

    public static float Width(LineWeight weight) =>
        weight switch
        {
            LineWeight.Heavy => 1.6f,
            LineWeight.Medium => 1f,
            LineWeight.Thin => 0.6f,
        };

    public static LinePattern Pattern(DashStyle dash) =>
        dash switch
        {
            DashStyle.Dashed => new LinePattern([5, 3], 0, "dashed"),
            DashStyle.Dotted => new LinePattern([1.2f, 2.2f], 0, "dotted"),
            DashStyle.DashDot => new LinePattern([6, 2.4f, 1.2f, 2.4f], 0, "dash dot"),
            DashStyle.LongDashed => new LinePattern([12, 3], 0, "long dashed"),
            DashStyle.Solid => LinePattern.Solid,
        };

    public static bool IsFilled(MarkerShape marker) =>
        marker
            is MarkerShape.FilledCircle
                or MarkerShape.FilledSquare
                or MarkerShape.FilledTriangle
                or MarkerShape.FilledDiamond;

    public static SKColor Skia(Color color) => new(color.Red, color.Green, color.Blue);

    private static TextStyle Text(FontFace face, double size, double leading) =>
        new(face, size, leading, TextStyle.Ink);
}
