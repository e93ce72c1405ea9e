using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Paper and margins in points, measured from the top left corner.</summary>
internal sealed record PageFrame(double Width, double Height)
{
    private const double PointsPerMillimeter = 72 / 25.4;

    /// <summary>The same on every paper, so that nothing breaks otherwise on another.</summary>
    private static readonly double s_contentWidth = Millimeters(176);

    public double Left { get; } = (Width - s_contentWidth) / 2;

    public double Right => Width - Left;

    // The shorter paper gives of its margins first.
    public double Top { get; } = Millimeters(16);

    public double Bottom => Height - Millimeters(IsShort(Height) ? 11.5 : 13.5);

    public double ContentWidth => Right - Left;

    public double ContentHeight => Bottom - Top;

    /// <summary>Baseline of the running header.</summary>
    public double HeaderBaseline { get; } = Millimeters(10.5);

    /// <summary>Baseline of the running footer.</summary>
    public double FooterBaseline => Height - Millimeters(IsShort(Height) ? 6.5 : 8);

    public static PageFrame Of(PaperSize paper) =>
        paper == PaperSize.Letter ? new(612, 792) : new(Millimeters(210), Millimeters(297));

    private static bool IsShort(double height) => height < Millimeters(290);

    public static double Millimeters(double value) => value * PointsPerMillimeter;

    public static double ToMillimeters(double points) => points / PointsPerMillimeter;

    /// <summary>The same rectangle counted from the lower left corner, as PDF does.</summary>
    public XRect FromBelow(XRect rectangle) =>
        new(
            rectangle.X,
            Height - rectangle.Y - rectangle.Height,
            rectangle.Width,
            rectangle.Height
        );
}
