using System.Collections.Immutable;
using PdfSharp.Drawing;
using StabilityStudy.Reporting.Charts;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Figures, one or several side by side, with their captions below.</summary>
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
        var width = (frame.ContentWidth - (Gutter * (charts.Length - 1))) / charts.Length;
        var sized = SizedChart.Level([.. charts.Select(c => Sized(c, width, frame))]);
        var placed = charts
            .Select((c, i) => Place(c, sized[i], frame.Left + (i * (width + Gutter)), figures))
            .ToImmutableArray();
        var height = placed.Max(f => f.Sized.Height);
        var captions = placed.Max(f => f.Caption.Length) * TextStyle.Caption.Leading;
        if (height + CaptionGap + captions <= frame.ContentHeight)
        {
            return
            [
                new Piece(
                    height + (captions > 0 ? CaptionGap + captions : 0),
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
                ProseLayout.Paragraph(new Paragraph(c.Caption, ParagraphStyle.Body), frame, tags)
            ),
        ];
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
    ) =>
        new(
            sized,
            figures.Add(sized),
            left,
            chart.AlternativeText,
            chart.Caption.Length == 0
                ? []
                : LineBreaking.Break(chart.Caption, TextStyle.Caption, sized.Width)
        );

    private static void Draw(
        ImmutableArray<PlacedFigure> placed,
        double top,
        double height,
        FigureBook figures,
        PageCanvas canvas
    )
    {
        foreach (var figure in placed)
        {
            // Figures of different heights stand on one line.
            var area = new XRect(
                figure.Left,
                top + height - figure.Sized.Height,
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
                        top + height + CaptionGap
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
