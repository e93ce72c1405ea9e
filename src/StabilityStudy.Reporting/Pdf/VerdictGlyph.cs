using System.Diagnostics;
using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>The shapes of the conclusions as vectors: each has an outline and a filling of its own.</summary>
internal static class VerdictGlyph
{
    /// <summary>Draws a shape into a square.</summary>
    /// <param name="shape">Which one.</param>
    /// <param name="x">Left edge in points.</param>
    /// <param name="y">Upper edge in points.</param>
    /// <param name="size">Side of the square in points.</param>
    /// <param name="canvas">Where to draw.</param>
    public static void Draw(
        VerdictShape shape,
        double x,
        double y,
        double size,
        PageCanvas canvas
    ) => canvas.Artifact(() => DrawMarks(shape, new Square(x, y, size), canvas));

    private static void DrawMarks(VerdictShape shape, Square square, PageCanvas canvas)
    {
        switch (shape)
        {
            case VerdictShape.Supported:
                canvas.Fill(square.Circle(0.02), TextStyle.Accent);
                canvas.Stroke(
                    square.Path(false, (0.26, 0.53), (0.44, 0.71), (0.75, 0.33)),
                    XColors.White,
                    square.Size * 0.12
                );
                break;
            case VerdictShape.NotSupported:
                canvas.Fill(
                    square.Path(true, (0.06, 0.06), (0.94, 0.06), (0.94, 0.94), (0.06, 0.94)),
                    TextStyle.Ink
                );
                canvas.Stroke(
                    square.Path(false, (0.3, 0.3), (0.7, 0.7)),
                    XColors.White,
                    square.Size * 0.12
                );
                canvas.Stroke(
                    square.Path(false, (0.7, 0.3), (0.3, 0.7)),
                    XColors.White,
                    square.Size * 0.12
                );
                break;
            case VerdictShape.ShorterThanToday:
                canvas.Fill(
                    square.Path(true, (0.5, 0.04), (0.98, 0.94), (0.02, 0.94)),
                    TextStyle.Ink
                );
                canvas.Stroke(
                    square.Path(false, (0.5, 0.36), (0.5, 0.64)),
                    XColors.White,
                    square.Size * 0.12
                );
                canvas.Stroke(
                    square.Path(false, (0.5, 0.78), (0.5, 0.8)),
                    XColors.White,
                    square.Size * 0.12
                );
                break;
            case VerdictShape.NotReached:
                Outline(canvas, square, square.Path(true, (0.5, 0.1), (0.95, 0.9), (0.05, 0.9)));
                break;
            case VerdictShape.NotAssessed:
                Outline(canvas, square, square.Circle(0.07));
                Outline(canvas, square, square.Path(false, (0.3, 0.5), (0.7, 0.5)));
                break;
            case VerdictShape.Inconclusive:
                canvas.Fill(
                    square.Path(true, (0.5, 0.02), (0.5, 0.98), (0.02, 0.5)),
                    TextStyle.Ink
                );
                Outline(
                    canvas,
                    square,
                    square.Path(true, (0.5, 0.04), (0.96, 0.5), (0.5, 0.96), (0.04, 0.5))
                );
                break;
            default:
                throw new UnreachableException();
        }
    }

    private static void Outline(PageCanvas canvas, Square square, XGraphicsPath path) =>
        canvas.Stroke(path, TextStyle.Ink, square.Size * 0.09);

    private sealed record Square(double X, double Y, double Size)
    {
        public XGraphicsPath Circle(double inset)
        {
            var path = new XGraphicsPath();
            path.AddEllipse(
                X + (inset * Size),
                Y + (inset * Size),
                (1 - (2 * inset)) * Size,
                (1 - (2 * inset)) * Size
            );
            return path;
        }

        public XGraphicsPath Path(bool closed, params (double X, double Y)[] corners)
        {
            var path = new XGraphicsPath();
            path.AddLines([.. corners.Select(c => new XPoint(X + (c.X * Size), Y + (c.Y * Size)))]);
            if (closed)
            {
                path.CloseFigure();
            }

            return path;
        }
    }
}
