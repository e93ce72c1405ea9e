using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Boxes with lines between them, and text beside the branches; one piece, so that a page never cuts it.</summary>
internal static class FlowLayout
{
    private const double StepWidth = 104;
    private const double BranchWidth = 96;
    private const double Gap = 18;
    private const double Padding = 4;
    private const double PaddingAbove = 2;
    private const double Between = 3;
    private const double LineWidth = 0.7;

    public static ImmutableArray<Piece> Pieces(
        FlowFigure flow,
        PageFrame frame,
        ImmutableArray<Tag> tags
    )
    {
        var steps = flow
            .Steps.Select(step => Lines(step, TextStyle.Caption, StepWidth - (2 * Padding)))
            .ToImmutableArray();
        var beside = frame.Left + (steps.Length * (StepWidth + Gap)) + BranchWidth + 10;
        var branches = flow
            .Branches.Select(branch => new LaidBranch(
                Lines(branch.Box, TextStyle.Caption, BranchWidth - (2 * Padding)),
                Lines(branch.LeftOut, TextStyle.Small, frame.Right - beside)
            ))
            .ToImmutableArray();
        var tallest = Math.Max(steps.Max(BoxHeight), HeightOf(branches));
        return
        [
            new Piece(
                tallest + 1,
                6,
                tags,
                (canvas, top) =>
                    canvas.Illustration(
                        flow.AlternativeText,
                        new XRect(frame.Left, top, frame.ContentWidth, tallest),
                        () => Draw(steps, branches, beside, top, tallest, canvas)
                    )
            ),
        ];
    }

    private static void Draw(
        ImmutableArray<ImmutableArray<string>> steps,
        ImmutableArray<LaidBranch> branches,
        double beside,
        double top,
        double tallest,
        PageCanvas canvas
    )
    {
        var middle = top + (tallest / 2);
        var left = canvas.Frame.Left;
        foreach (var (index, step) in steps.Index())
        {
            Box(step, left, middle - (BoxHeight(step) / 2), StepWidth, canvas);
            left += StepWidth;
            if (index + 1 < steps.Length)
            {
                Rule(left, middle, left + Gap, middle, canvas);
                left += Gap;
            }
        }

        if (branches.IsEmpty)
        {
            return;
        }

        var fork = left + (Gap / 2);
        Rule(left, middle, fork, middle, canvas);
        left += Gap;
        var centers = new List<double> { middle };
        var y = middle - (HeightOf(branches) / 2);
        foreach (var branch in branches)
        {
            var center = y + (branch.Height / 2);
            centers.Add(center);
            Rule(fork, center, left, center, canvas);
            Box(branch.Box, left, center - (BoxHeight(branch.Box) / 2), BranchWidth, canvas);
            canvas.Lines(
                branch.LeftOut,
                TextStyle.Small,
                beside,
                center - (branch.LeftOut.Length * TextStyle.Small.Leading / 2)
            );
            y += branch.Height + Between;
        }

        Rule(fork, centers.Min(), fork, centers.Max(), canvas);
    }

    private static void Box(
        ImmutableArray<string> lines,
        double left,
        double top,
        double width,
        PageCanvas canvas
    )
    {
        var border = new XGraphicsPath();
        border.AddRectangle(new XRect(left, top, width, BoxHeight(lines)));
        canvas.Stroke(border, TextStyle.Ink, LineWidth);
        canvas.Lines(lines, TextStyle.Caption, left + Padding, top + PaddingAbove);
    }

    private static void Rule(double x1, double y1, double x2, double y2, PageCanvas canvas) =>
        canvas.Line(x1, y1, x2, y2, LineWidth, TextStyle.Ink);

    private static ImmutableArray<string> Lines(string text, TextStyle style, double width) =>
        text.Length == 0 ? [] : LineBreaking.Break(text, style, width);

    private static double HeightOf(ImmutableArray<LaidBranch> branches) =>
        branches.Sum(branch => branch.Height + Between) - Between;

    private static double BoxHeight(ImmutableArray<string> lines) =>
        (lines.Length * TextStyle.Caption.Leading) + (2 * PaddingAbove);

    private sealed record LaidBranch(ImmutableArray<string> Box, ImmutableArray<string> LeftOut)
    {
        public double Height => Math.Max(BoxHeight(Box), LeftOut.Length * TextStyle.Small.Leading);
    }
}
