using PdfSharp.Drawing;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>How a text is set: font, size and distance of the lines in points, and color.</summary>
internal sealed record TextStyle(FontFace Face, double Size, double Leading, XColor Color)
{
    // Ink and accent are dark enough to print alike in grayscale; nothing is told apart by them.
    public static readonly XColor Ink = XColor.FromArgb(0x1A, 0x1C, 0x20);
    public static readonly XColor Accent = XColor.FromArgb(0x1D, 0x44, 0x66);
    public static readonly XColor Soft = XColor.FromArgb(0x55, 0x5B, 0x63);
    public static readonly XColor Hairline = XColor.FromArgb(0xC4, 0xC8, 0xCE);

    public static readonly TextStyle Title = new(ReportFonts.Semibold, 16, 20, Accent);
    public static readonly TextStyle SectionTitle = new(ReportFonts.Semibold, 11, 14, Accent);
    public static readonly TextStyle Heading = new(ReportFonts.Semibold, 9, 12, Ink);
    public static readonly TextStyle Body = new(ReportFonts.Regular, 9, 12.2, Ink);
    public static readonly TextStyle Strong = Body with { Face = ReportFonts.Semibold };
    public static readonly TextStyle Lead = new(ReportFonts.Regular, 9.6, 13.2, Ink);
    public static readonly TextStyle Small = new(ReportFonts.Regular, 7.5, 9.6, Soft);
    public static readonly TextStyle Caption = new(ReportFonts.Regular, 8, 10.6, Ink);
    public static readonly TextStyle TableCaption = Caption with { Face = ReportFonts.Semibold };
    public static readonly TextStyle VerdictWord = new(ReportFonts.Semibold, 11, 14.4, Accent);
    public static readonly XColor Tint = XColor.FromArgb(0xE8, 0xEB, 0xEF);

    /// <summary>Conclusion of a row of page 1, and the same where there are many.</summary>
    public static readonly TextStyle Answer = new(ReportFonts.Semibold, 11, 14, Ink);
    public static readonly TextStyle AnswerOfMany = new(ReportFonts.Semibold, 10, 12.5, Ink);

    /// <summary>Name of a row and what it means for patients.</summary>
    public static readonly TextStyle Remark = new(ReportFonts.Regular, 9, 12.5, Ink);

    /// <summary>What speaks against a row; where there are many rows they are set as <see cref="Note"/>.</summary>
    public static readonly TextStyle Reservation = new(ReportFonts.Regular, 8.5, 11.5, Ink);
    public static readonly TextStyle Note = new(ReportFonts.Regular, 8, 10.8, Ink);

    /// <summary>What is looked up: running text of the appendix.</summary>
    public static readonly TextStyle LookedUp = new(ReportFonts.Regular, 7.5, 9.6, Ink);

    /// <summary>Heads and facts.</summary>
    public static readonly TextStyle Head = new(ReportFonts.Regular, 7.5, 10, Soft);
    public static readonly TextStyle Mono = new(ReportFonts.Fixed, 7.8, 10.8, Ink);
    public static readonly TextStyle Running = new(ReportFonts.Regular, 7.4, 10, Soft);

    /// <summary>Distance from the top of a line to its baseline: the line's slack is shared above and below.</summary>
    public double Ascent => ((Leading - (Size * 1.0)) / 2) + (Size * 0.8);

    /// <summary>Width of a text in points; the text may hold any character.</summary>
    public double Width(string text) => Face.Width(PrintableText.For(Face, text), Size);
}
