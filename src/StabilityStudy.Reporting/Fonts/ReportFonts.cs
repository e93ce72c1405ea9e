using PdfSharp.Fonts;
using SkiaSharp;

namespace StabilityStudy.Reporting.Fonts;

/// <summary>
/// The four fonts of the report. Nothing is ever looked up among the fonts of the machine, so the same report has the
/// same pages everywhere.
/// </summary>
public static class ReportFonts
{
    /// <summary>Family of running text, for PDFsharp and ScottPlot.</summary>
    public const string Sans = "Report Sans";

    /// <summary>Family of fixed-width text.</summary>
    public const string Mono = "Report Mono";

    private static readonly Lazy<bool> Registration = new(RegisterOnce);

    /// <summary>The font of running text as a TrueType file, for stamps of signatures.</summary>
    public static ReadOnlyMemory<byte> StampFontFile => Regular.File;

    internal static FontFace Regular { get; } = FontFace.Load("ReportSans-Regular");

    internal static FontFace Semibold { get; } = FontFace.Load("ReportSans-Semibold");

    internal static FontFace Italic { get; } = FontFace.Load("ReportSans-Italic");

    internal static FontFace Fixed { get; } = FontFace.Load("ReportMono-Regular");

    /// <summary>
    /// Makes PDFsharp and ScottPlot use these fonts only; further calls do nothing. Both libraries keep their font
    /// sources in process-wide settings, hence the call instead of an argument.
    /// </summary>
    public static void Register() => _ = Registration.Value;

    internal static FontFace Face(string family, bool bold, bool italic) =>
        string.Equals(family, Mono, StringComparison.Ordinal) ? Fixed
        : bold ? Semibold
        : italic ? Italic
        : Regular;

    private static bool RegisterOnce()
    {
        GlobalFontSettings.FontResolver = new PdfFontSource();
        ScottPlot.Fonts.FontResolvers.Insert(0, new PlotFontSource());
        ScottPlot.Fonts.Default = Sans;
        return true;
    }

    private sealed class PdfFontSource : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) =>
            new(Face(familyName, bold, italic).Name);

        public byte[] GetFont(string faceName) =>
            new[] { Regular, Semibold, Italic, Fixed }
                .Single(f => string.Equals(f.Name, faceName, StringComparison.Ordinal))
                .File;
    }

    private sealed class PlotFontSource : ScottPlot.IFontResolver
    {
        public SKTypeface CreateTypeface(string fontName, bool bold, bool italic) =>
            Face(fontName, bold, italic).Typeface;

        public SKTypeface CreateTypeface(
            string fontName,
            ScottPlot.FontWeight weight,
            ScottPlot.FontSlant slant,
            ScottPlot.FontSpacing spacing
        ) =>
            Face(
                fontName,
                weight >= ScottPlot.FontWeight.SemiBold,
                slant != ScottPlot.FontSlant.Upright
            ).Typeface;
    }
}
