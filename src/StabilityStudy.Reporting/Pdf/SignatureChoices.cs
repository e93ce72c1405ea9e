using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Choices of a signature box, each with a square to tick; short ones share a line.</summary>
internal static class SignatureChoices
{
    /// <summary>Height of a line in points.</summary>
    public const double Leading = 11;

    private const double Square = 6;
    private const double Gap = 4;
    private const double Between = 14;

    /// <summary>One line of a choice and where it stands.</summary>
    /// <param name="Text">The text.</param>
    /// <param name="Left">From the left edge of the first choice, in points.</param>
    /// <param name="Row">Number of the line from the top.</param>
    /// <param name="HasSquare">Whether a square stands before it; only before the first line of a choice.</param>
    internal sealed record ChoiceLine(string Text, double Left, int Row, bool HasSquare);

    /// <summary>Breaks and places the choices.</summary>
    public static ImmutableArray<ChoiceLine> Place(ImmutableArray<string> choices, double width)
    {
        var lines = ImmutableArray.CreateBuilder<ChoiceLine>();
        var (row, left) = (0, 0.0);
        foreach (var choice in choices)
        {
            var broken = LineBreaking.Break(choice, TextStyle.Small, width - Square - Gap);
            var wide = Square + Gap + broken.Max(TextStyle.Small.Width);
            if (left > 0 && (broken.Length > 1 || left + wide > width))
            {
                (row, left) = (row + 1, 0);
            }

            lines.Add(new ChoiceLine(broken[0], left, row, HasSquare: true));
            foreach (var line in broken[1..])
            {
                row++;
                lines.Add(new ChoiceLine(line, 0, row, HasSquare: false));
            }

            left = broken.Length > 1 ? width : left + wide + Between;
        }

        return lines.ToImmutable();
    }

    /// <summary>Height of placed choices in points.</summary>
    public static double Height(ImmutableArray<ChoiceLine> lines) =>
        lines.IsEmpty ? 0 : (lines[^1].Row + 1) * Leading;

    /// <summary>Draws placed choices.</summary>
    public static void Draw(
        ImmutableArray<ChoiceLine> lines,
        double left,
        double top,
        PageCanvas canvas
    )
    {
        foreach (var line in lines)
        {
            var (x, y) = (left + line.Left, top + (line.Row * Leading));
            if (line.HasSquare)
            {
                canvas.Artifact(() =>
                {
                    var box = new XGraphicsPath();
                    box.AddRectangle(new XRect(x, y + 2.5, Square, Square));
                    canvas.Stroke(box, TextStyle.Ink, 0.6);
                });
            }

            canvas.Tagged(
                "P",
                () => canvas.Text(line.Text + " ", TextStyle.Small, x + Square + Gap, y)
            );
        }
    }
}
