namespace StabilityStudy.Reporting.Pdf;

/// <summary>A short text in a heavier style followed by one in the usual style, broken together into lines.</summary>
/// <param name="Lines">The lines; each is a run of words of one style or the other.</param>
/// <param name="Leading">Distance of the lines in points.</param>
internal sealed record RichText(
    ImmutableArray<ImmutableArray<(string Text, TextStyle Style)>> Lines,
    double Leading
)
{
    /// <summary>Height in points.</summary>
    public double Height => Lines.Length * Leading;

    /// <summary>Breaks both at spaces; a number and its unit stay together.</summary>
    /// <param name="point">The heavier text; may be empty.</param>
    /// <param name="text">The rest; may be empty.</param>
    /// <param name="style">Style of the rest.</param>
    /// <param name="width">Width of the lines in points.</param>
    public static RichText Break(string point, string text, TextStyle style, double width) =>
        Break([(point, true), (text, false)], style, width);

    /// <summary>The same of several such texts one after the other.</summary>
    /// <param name="runs">The texts, and which are the heavier ones.</param>
    /// <param name="style">Style of the others.</param>
    /// <param name="width">Width of the lines in points.</param>
    /// <param name="strongSize">Size of the heavier ones in points; null for that of the others.</param>
    public static RichText Break(
        IEnumerable<(string Text, bool IsStrong)> runs,
        TextStyle style,
        double width,
        double? strongSize = null
    )
    {
        var strong = style with
        {
            Face = Fonts.ReportFonts.Semibold,
            Size = strongSize ?? style.Size,
        };
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<(string, TextStyle)>>();
        var line = ImmutableArray.CreateBuilder<(string Text, TextStyle Style)>();
        var used = 0.0;
        foreach (
            var (word, of) in runs.SelectMany(run =>
                Words(run.Text, run.IsStrong ? strong : style, width)
            )
        )
        {
            var space = line.Count == 0 ? 0 : style.Width(" ");
            var wide = of.Width(word);
            if (line.Count > 0 && used + space + wide > width)
            {
                lines.Add(line.DrainToImmutable());
                (used, space) = (0, 0);
            }

            if (line.Count > 0 && line[^1].Style == of)
            {
                line[^1] = (line[^1].Text + " " + word, of);
            }
            else
            {
                line.Add((word, of));
            }

            used += space + wide;
        }

        lines.Add(line.DrainToImmutable());
        return new RichText(lines.ToImmutable(), style.Leading);
    }

    /// <summary>Draws the lines; a reader of the text meets a space between them.</summary>
    public void Draw(PageCanvas canvas, double left, double top)
    {
        foreach (var (i, line) in Lines.Index())
        {
            var x = left;
            foreach (var (text, style) in line)
            {
                canvas.Text(text + " ", style, x, top + (i * Leading));
                x += style.Width(text + " ");
            }
        }
    }

    // A word wider than a line is broken where it has to be.
    private static IEnumerable<(string, TextStyle)> Words(
        string text,
        TextStyle style,
        double width
    ) =>
        text.Length == 0
            ? []
            : LineBreaking
                .Words(Fonts.PrintableText.For(style.Face, text.Replace('\n', ' ')), style, width)
                .SelectMany(word =>
                    style.Width(word) <= width
                        ? [word]
                        : LineBreaking.Break(word, style, width).AsEnumerable()
                )
                .Select(word => (word, style));
}
