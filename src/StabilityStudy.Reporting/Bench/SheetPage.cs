using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>A page to write on: paper, live area and the words in its margins. All lengths are points.</summary>
/// <param name="Frame">The paper.</param>
/// <param name="Left">Left edge of the live area.</param>
/// <param name="Right">Right edge.</param>
internal sealed record SheetPage(PageFrame Frame, double Left, double Right)
{
    private const double HeaderBaseline = 10.2;
    private const double FooterAbove = 8;

    /// <summary>Top of what stands below the running line.</summary>
    public static double Top { get; } = Mm(15.5);

    /// <summary>Where what stands above the running line at the foot ends.</summary>
    public double Bottom => Frame.Height - Mm(13);

    public double Width => Right - Left;

    /// <summary>Whether the paper is the narrower one when it lies.</summary>
    public bool IsLetter => Math.Max(Frame.Width, Frame.Height) < Mm(290);

    /// <summary>Points of so many millimeters.</summary>
    public static double Mm(double value) => PageFrame.Millimeters(value);

    /// <summary>A page that lies: room for columns.</summary>
    public static SheetPage Lying(PaperSize paper)
    {
        var upright = PageFrame.Of(paper);
        var frame = new PageFrame(upright.Height, upright.Width);
        var margin = Mm(14);
        return new(frame, margin, frame.Width - margin);
    }

    /// <summary>An upright page.</summary>
    public static SheetPage Upright(PaperSize paper)
    {
        var frame = PageFrame.Of(paper);
        return new(frame, frame.Left, frame.Right);
    }

    /// <summary>Starts the page and writes its running lines.</summary>
    public void Start(PageCanvas canvas, RunningHeader running, string sheet)
    {
        canvas.Enter([]);
        canvas.StartPage(Frame);
        canvas.Artifact(() =>
        {
            Pair(canvas, running.Left, running.Right, Mm(HeaderBaseline));
            var rule = Mm(HeaderBaseline) + 5;
            canvas.Line(Left, rule, Right, rule, 0.4, TextStyle.Hairline);
            Pair(canvas, running.Fingerprint, sheet, Frame.Height - Mm(FooterAbove));
        });
    }

    private void Pair(PageCanvas canvas, string left, string right, double baseline)
    {
        var style = SheetText.Running;
        var top = baseline - style.Ascent;
        var room = Width - style.Width(right) - 10;
        canvas.Text(SheetText.Shortened(left, style, room), style, Left, top);
        canvas.Text(right, style, Right - style.Width(right), top);
    }
}
