using SkiaSharp;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Charts;

/// <summary>
/// All charts of a report as one vector PDF, a page a chart. One file, because the plot library embeds its fonts once
/// a file.
/// </summary>
internal static class ChartBook
{
    /// <summary>Draws the charts in order.</summary>
    /// <returns>A PDF file; its first page is the first chart. Empty when there are no charts.</returns>
    public static byte[] Draw(ImmutableArray<SizedChart> charts)
    {
        if (charts.IsEmpty)
        {
            return [];
        }

        ReportFonts.Register();
        using var output = new MemoryStream();
        using (var document = SKDocument.CreatePdf(output))
        {
            foreach (var sized in charts)
            {
                using var canvas = document.BeginPage(sized.Width, sized.Height);
                ChartDrawing.Draw(sized, canvas);
                document.EndPage();
            }

            document.Close();
        }

        return output.ToArray();
    }
}
