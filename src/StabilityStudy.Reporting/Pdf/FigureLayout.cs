using PdfSharp.Drawing;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Figures, one or several side by side, with their captions.</summary>
internal static class FigureLayout
{
    private const double Gutter = 14;
    private const double CaptionGap = 3;

    /// <summary>Distance to what stands above, in points.</summary>
    public const double SpaceBefore = 8;

    public static ImmutableArray<Piece> Pieces(
        ImmutableArray<ChartBlock> charts,
        PageFrame frame,
        FigureBook figures,
        ImmutableArray<Tag> tags
    )
    {
        var width = WidthOf(charts, frame);
        var sized = Sized(charts, frame);
        var placed = charts
            .Select((c, i) => Place(c, sized[i], frame.Left + (i * (width + Gutter)), figures))
            .ToImmutableArray();
        var height = placed.Max(f => f.Sized.Height);
        var whole = HeightOf(charts, frame);
        if (whole <= frame.ContentHeight)
        {
            return
            [
                new Piece(
                    whole,
                    SpaceBefore,
                    tags,
                    (canvas, top) => Draw(placed, top, height, figures, canvas)
                ),
            ];
        }

        // Captions longer than a page follow as text.
        return
        [
            new Piece(
                height,
                SpaceBefore,
                tags,
                (canvas, top) =>
                    Draw(
                        [.. placed.Select(f => f with { Caption = [] })],
                        top,
                        height,
                        figures,
                        canvas
                    )
            )
            {
                HoldNext = Hold.Firm,
            },
            .. charts.SelectMany(c =>
                ProseLayout.Paragraph(
                    new Paragraph(c.Caption, ParagraphStyle.Body),
                    TextStyle.Body,
                    frame,
                    tags
                )
            ),
        ];
    }

    /// <summary>Height with the captions, in points.</summary>
    public static double HeightOf(ImmutableArray<ChartBlock> charts, PageFrame frame)
    {
        var sized = Sized(charts, frame);
        var lines = charts.Zip(sized, CaptionOf).Max(caption => caption.Length);
        return sized.Max(chart => chart.Height)
            + (lines > 0 ? CaptionGap + (lines * TextStyle.Caption.Leading) : 0);
    }

    private static double WidthOf(ImmutableArray<ChartBlock> charts, PageFrame frame) =>
        (frame.ContentWidth - (Gutter * (charts.Length - 1))) / charts.Length;

    private static ImmutableArray<SizedChart> Sized(
        ImmutableArray<ChartBlock> charts,
        PageFrame frame
    )
    {
        var width = WidthOf(charts, frame);
        return SizedChart.Level([.. charts.Select(chart => Sized(chart, width, frame))]);
    }

    private static SizedChart Sized(ChartBlock chart, double width, PageFrame frame)
    {
        var wanted = PageFrame.Millimeters(chart.HeightMillimeters);
        return new SizedChart(
            chart.Chart,
            (int)width,
            (int)Math.Clamp(wanted, 1, frame.ContentHeight - 60)
        );
    }

    private static PlacedFigure Place(
        ChartBlock chart,
        SizedChart sized,
        double left,
        FigureBook figures
    ) => new(sized, figures.Add(sized), left, chart.AlternativeText, CaptionOf(chart, sized));

    private static ImmutableArray<string> CaptionOf(ChartBlock chart, SizedChart sized) =>
        chart.Caption.Length == 0
            ? []
            : LineBreaking.Break(chart.Caption, TextStyle.Caption, sized.Width);

    private static void Draw(
        ImmutableArray<PlacedFigure> placed,
        double top,
        double height,
        FigureBook figures,
        PageCanvas canvas
    )
    {
        // The caption of a figure stands above it; remarks on figures side by side stand below them.
        var above = placed is [{ Caption.IsEmpty: false } alone]
            ? (alone.Caption.Length * TextStyle.Caption.Leading) + CaptionGap
            : 0;
        foreach (var figure in placed)
        {
            // Figures of different heights stand on one line.
            var area = new XRect(
                figure.Left,
                top + above + height - figure.Sized.Height,
                figure.Sized.Width,
                figure.Sized.Height
            );
            canvas.Figure(figures.Image(figure.Index), area, figure.AlternativeText);
            if (figure.Caption.IsEmpty)
            {
                continue;
            }

            canvas.Tagged(
                "Caption",
                () =>
                    canvas.Lines(
                        figure.Caption,
                        TextStyle.Caption,
                        figure.Left,
                        above > 0 ? top : top + height + CaptionGap
                    )
            );
        }
    }

    private sealed record PlacedFigure(
        SizedChart Sized,
        int Index,
        double Left,
        string AlternativeText,
        ImmutableArray<string> Caption
    );
}
