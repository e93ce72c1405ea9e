using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>How words stand on a sheet: black on white, so that a copy holds them.</summary>
internal static class SheetText
{
    public static readonly TextStyle Running = TextStyle.Running;
    public static readonly TextStyle Title = new(ReportFonts.Semibold, 15.5, 19, TextStyle.Accent);
    public static readonly TextStyle Lead = new(ReportFonts.Regular, 9, 12, TextStyle.Ink);
    public static readonly TextStyle Note = new(ReportFonts.Regular, 8.5, 11.5, TextStyle.Ink);
    public static readonly TextStyle Head = new(ReportFonts.Regular, 7.8, 9.4, TextStyle.Ink);
    public static readonly TextStyle StrongHead = Head with { Face = ReportFonts.Semibold };
    public static readonly TextStyle Cell = new(ReportFonts.Regular, 8.5, 10.5, TextStyle.Ink);
    public static readonly TextStyle StrongCell = Cell with { Face = ReportFonts.Semibold };
    public static readonly TextStyle Small = new(ReportFonts.Regular, 7.5, 9.2, TextStyle.Ink);

    /// <summary>Two lines of it fit into one row.</summary>
    public static readonly TextStyle StrongSmall = Small with
    {
        Face = ReportFonts.Semibold,
        Leading = 8.2,
    };
    public static readonly TextStyle Code = new(ReportFonts.Semibold, 13.5, 16, TextStyle.Ink);
    public static readonly TextStyle TubeCode = new(
        ReportFonts.Semibold,
        10.2,
        12.4,
        TextStyle.Ink
    );
    public static readonly TextStyle RunName = new(ReportFonts.Semibold, 13.5, 16, TextStyle.Ink);

    /// <summary>One line; what does not fit ends in an ellipsis. Only for what stands in full elsewhere too.</summary>
    public static string Shortened(string text, TextStyle style, double width)
    {
        var lines = LineBreaking.Break(text, style, width);
        return lines.Length == 1
            ? lines[0]
            : LineBreaking.Break(text, style, width - style.Width("…"))[0] + "…";
    }
}
