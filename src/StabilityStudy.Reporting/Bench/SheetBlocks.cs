using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Title, opening words and notes of a sheet.</summary>
internal static class SheetBlocks
{
    private static readonly double s_gap = Mm(9);

    /// <summary>Title at the left, what is to be known first at the right of it.</summary>
    /// <returns>Where both end.</returns>
    public static double Opening(
        PageCanvas canvas,
        SheetPage page,
        string title,
        double titleWidth,
        IEnumerable<(string Text, bool IsStrong)> words
    )
    {
        var lines = LineBreaking.Break(title, SheetText.Title, titleWidth);
        titleWidth = lines.Max(SheetText.Title.Width);
        canvas.Tagged(
            "H1",
            () => canvas.Lines(lines, SheetText.Title, page.Left, SheetPage.Top + Mm(1.4))
        );
        var left = page.Left + titleWidth + Mm(8);
        var text = RichText.Break(words, SheetText.Lead, page.Right - left);
        canvas.Tagged("P", () => text.Draw(canvas, left, SheetPage.Top));
        return SheetPage.Top
            + Math.Max(Mm(1.4) + (lines.Length * SheetText.Title.Leading), text.Height)
            + Mm(1);
    }

    /// <summary>Notes beside each other.</summary>
    public static void Notes(
        PageCanvas canvas,
        SheetPage page,
        double top,
        ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> notes
    )
    {
        foreach (var (i, text) in Broken(page, notes).Index())
        {
            canvas.Tagged(
                "P",
                () => text.Draw(canvas, page.Left + (i * (Width(page, notes.Length) + s_gap)), top)
            );
        }
    }

    /// <summary>Room for the rows of a table above its notes.</summary>
    public static double Room(
        SheetPage page,
        SheetTable table,
        ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> notes
    ) => page.Bottom - (SheetPage.Top + Mm(14)) - table.HeadHeight - Height(page, notes) - Mm(4);

    /// <summary>Height of the notes.</summary>
    private static double Height(
        SheetPage page,
        ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> notes
    ) => Broken(page, notes).Max(text => text.Height);

    private static IEnumerable<RichText> Broken(
        SheetPage page,
        ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> notes
    ) => notes.Select(note => RichText.Break(note, SheetText.Note, Width(page, notes.Length)));

    private static double Width(SheetPage page, int notes) =>
        (page.Width - ((notes - 1) * s_gap)) / notes;
}
