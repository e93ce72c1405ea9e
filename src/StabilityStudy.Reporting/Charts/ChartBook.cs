using System.Collections.Immutable;
using SkiaSharp;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Charts;

/// <summary>A chart with the size in which it is drawn, in points.</summary>
internal sealed record SizedChart(Chart Chart, int Width, int Height)
{
    /// <summary>Least room above the frame, so that frames side by side are level.</summary>
    public double LeastTop { get; init; }

    /// <summary>Least room below the frame.</summary>
    public double LeastBottom { get; init; }

    /// <summary>Charts side by side: each has room for its frame; those of one height have level frames.</summary>
    public static ImmutableArray<SizedChart> Level(ImmutableArray<SizedChart> asked)
    {
        var sameHeight = asked.All(c => c.Height == asked[0].Height);
        var roomy = asked.Select(ChartMargins.WithRoom).ToImmutableArray();
        ImmutableArray<SizedChart> charts = sameHeight
            ? [.. roomy.Select(c => c with { Height = roomy.Max(r => r.Height) })]
            : roomy;
        if (charts.Length < 2 || !sameHeight)
        {
            return charts;
        }

        var margins = charts.Select(ChartMargins.Of).ToArray();
        return
        [
            .. charts.Select(c =>
                c with
                {
                    LeastTop = margins.Max(m => m.Top),
                    LeastBottom = margins.Max(m => m.Bottom),
                }
            ),
        ];
    }
}

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
