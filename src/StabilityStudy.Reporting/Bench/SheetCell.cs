using PdfSharp.Drawing;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>What stands in a cell of a sheet.</summary>
/// <param name="Draw">Draws it into the room of the cell.</param>
internal sealed record SheetCell(Action<PageCanvas, XRect> Draw)
{
    /// <summary>Over how many rows it reaches.</summary>
    public int Rows { get; init; } = 1;

    /// <summary>Whether it names its row, or its rows.</summary>
    public bool IsHead { get; init; }

    /// <summary>Nothing to write and nothing to read.</summary>
    public static SheetCell Empty { get; } = new((_, _) => { });

    /// <summary>A box for a time of day.</summary>
    public static SheetCell Clock { get; } =
        new((canvas, room) => Boxes.Clock(canvas, room.X, Middle(room)));

    /// <summary>A box for a number.</summary>
    public static SheetCell Number { get; } =
        new((canvas, room) => Boxes.Number(canvas, room.X, Middle(room)));

    /// <summary>A box to tick.</summary>
    public static SheetCell Tick { get; } =
        new((canvas, room) => Boxes.Tick(canvas, room.X, Middle(room)));

    /// <summary>A line to write on.</summary>
    public static SheetCell Line { get; } =
        new(
            (canvas, room) =>
                Boxes.Line(canvas, room.X, Middle(room) + Mm(1.8), room.Width - Mm(2.5))
        );

    /// <summary>Grades to circle.</summary>
    public static SheetCell Grades { get; } =
        new(
            (canvas, room) =>
            {
                for (var i = 0; i < 4; i++)
                {
                    canvas.Text(
                        string.Create(CultureInfo.InvariantCulture, $"{i} "),
                        SheetText.Cell,
                        room.X + (i * Mm(3.4)),
                        Middle(room) - (SheetText.Cell.Leading / 2)
                    );
                }
            }
        );

    /// <summary>Words; several lines where one is too short for them.</summary>
    public static SheetCell Of(string text, TextStyle style, bool isCentered = false) =>
        new(
            (canvas, room) =>
            {
                var lines = LineBreaking.Break(text, style, room.Width);
                var top = Middle(room) - (lines.Length * style.Leading / 2);
                var left = isCentered
                    ? room.X + ((room.Width - lines.Max(style.Width)) / 2)
                    : room.X;
                canvas.Lines(lines, style, left, top);
            }
        );

    /// <summary>A planned time: white on black where a tube waits for it, framed for the baseline and a spare.</summary>
    public static SheetCell Time(string text, bool isDelayed, double width) =>
        new(
            (canvas, room) =>
                Boxes.Time(canvas, text, isDelayed, room.X, Middle(room), width, SheetText.TubeCode)
        );

    /// <summary>Cells beside each other in one.</summary>
    public static SheetCell Row(params (double Left, SheetCell Cell)[] parts) =>
        new(
            (canvas, room) =>
            {
                foreach (var (left, cell) in parts)
                {
                    cell.Draw(
                        canvas,
                        new XRect(room.X + left, room.Y, room.Width - left, room.Height)
                    );
                }
            }
        );

    private static double Middle(XRect room) => room.Y + (room.Height / 2);
}

/// <summary>Boxes of the sizes in which a hand writes.</summary>
internal static class Boxes
{
    public static readonly double ClockWidth = Mm(13);
    public static readonly double NumberWidth = Mm(9);
    public static readonly double TickWidth = Mm(3.3);
    private static readonly double s_height = Mm(5.3);
    private const double Stroke = 0.8;

    /// <summary>A box for a time, with its colon.</summary>
    public static void Clock(PageCanvas canvas, double left, double middle)
    {
        Frame(canvas, left, middle, ClockWidth, s_height);
        var style = SheetText.Small;
        canvas.Text(
            ":",
            style,
            left + ((ClockWidth - style.Width(":")) / 2),
            middle - (style.Leading / 2)
        );
    }

    public static void Number(PageCanvas canvas, double left, double middle) =>
        Frame(canvas, left, middle, NumberWidth, s_height);

    public static void Tick(PageCanvas canvas, double left, double middle) =>
        Frame(canvas, left, middle, TickWidth, TickWidth);

    public static void Line(PageCanvas canvas, double left, double y, double width) =>
        canvas.Line(left, y, left + width, y, Stroke, TextStyle.Ink);

    public static void Frame(
        PageCanvas canvas,
        double left,
        double middle,
        double width,
        double height
    )
    {
        var path = new XGraphicsPath();
        path.AddRectangle(left, middle - (height / 2), width, height);
        canvas.Stroke(path, TextStyle.Ink, Stroke);
    }

    /// <summary>A planned time in its own shape.</summary>
    public static void Time(
        PageCanvas canvas,
        string text,
        bool isDelayed,
        double left,
        double middle,
        double width,
        TextStyle style
    )
    {
        var height = style.Leading * 1.05;
        var path = new XGraphicsPath();
        path.AddRectangle(left, middle - (height / 2), width, height);
        if (isDelayed)
        {
            canvas.Fill(path, TextStyle.Ink);
        }
        else
        {
            canvas.Stroke(path, TextStyle.Ink, Stroke);
        }

        var shown = isDelayed ? style with { Color = XColors.White } : style;
        canvas.Text(
            text,
            shown,
            left + ((width - style.Width(text)) / 2),
            middle - (style.Leading / 2)
        );
    }
}
