namespace StabilityStudy.Reporting.Pdf;

/// <summary>The texts in the margins of every page.</summary>
internal static class RunningTexts
{
    /// <summary>Writes header and footer of the current page.</summary>
    public static void Draw(RunningHeader header, int pageCount, PageCanvas canvas)
    {
        var frame = canvas.Frame;
        var number = string.Create(
            CultureInfo.InvariantCulture,
            $"page {canvas.PageNumber} of {pageCount}"
        );
        canvas.Artifact(() =>
        {
            Pair(header.Left, header.Right, frame.HeaderBaseline, canvas);
            canvas.Line(
                frame.Left,
                frame.HeaderBaseline + 4,
                frame.Right,
                frame.HeaderBaseline + 4,
                0.4,
                TextStyle.Hairline
            );
            Pair(header.Fingerprint, number, frame.FooterBaseline, canvas);
        });
    }

    private static void Pair(string left, string right, double baseline, PageCanvas canvas)
    {
        var style = TextStyle.Running;
        var frame = canvas.Frame;
        var top = baseline - style.Ascent;
        var shownRight = Shortened(right, frame.ContentWidth * 0.6);
        var room = frame.ContentWidth - style.Width(shownRight) - 10;
        canvas.Text(Shortened(left, room), style, frame.Left, top);
        canvas.Text(shownRight, style, frame.Right - style.Width(shownRight), top);
    }

    /// <summary>One line; what does not fit ends in an ellipsis.</summary>
    private static string Shortened(string text, double width)
    {
        var lines = LineBreaking.Break(text, TextStyle.Running, width);
        return lines.Length == 1
            ? lines[0]
            : LineBreaking.Break(text, TextStyle.Running, width - TextStyle.Running.Width("…"))[0]
                + "…";
    }
}
