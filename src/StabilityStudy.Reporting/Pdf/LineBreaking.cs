using System.Text;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Breaks text into lines of a given width.</summary>
internal static class LineBreaking
{
    /// <summary>
    /// Breaks at spaces and line feeds; a word wider than the line is broken after a hyphen, slash, underscore or
    /// point if possible, else wherever the line is full. No-break spaces hold. Always at least one line.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="style">Font and size.</param>
    /// <param name="width">Width of the lines in points.</param>
    /// <returns>Lines that the font can draw.</returns>
    public static ImmutableArray<string> Break(string text, TextStyle style, double width)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var part in PrintableText.For(style.Face, text).Split('\n'))
        {
            AddLines(part, style, width, lines);
        }

        return lines.ToImmutable();
    }

    /// <summary>Like <see cref="Break"/>, but keeps every space, for fixed-width text.</summary>
    public static ImmutableArray<string> BreakFixed(string text, TextStyle style, double width)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var part in PrintableText.For(style.Face, text).Split('\n'))
        {
            lines.AddRange(Pieces(part, style, width));
        }

        return lines.ToImmutable();
    }

    /// <summary>Width of the widest word in points.</summary>
    public static double WidestWord(string text, TextStyle style) =>
        PrintableText
            .For(style.Face, text)
            .Split(' ', '\n')
            .Max(word => style.Face.Width(word, style.Size));

    private static void AddLines(
        string text,
        TextStyle style,
        double width,
        ImmutableArray<string>.Builder lines
    )
    {
        var line = new StringBuilder();
        var used = 0.0;
        var space = style.Face.Width(" ", style.Size);
        foreach (var word in Words(text, style, width))
        {
            foreach (var (piece, first) in WithFirst(Pieces(word, style, width)))
            {
                var wide = style.Face.Width(piece, style.Size);
                var gap = line.Length > 0 && first ? space : 0;
                if (line.Length > 0 && used + gap + wide > width)
                {
                    lines.Add(line.ToString());
                    line.Clear();
                    used = gap = 0;
                }

                line.Append(gap > 0 ? " " : "").Append(piece);
                used += gap + wide;
            }
        }

        lines.Add(line.ToString());
    }

    /// <summary>A number and its unit are one word if a line can hold both.</summary>
    public static List<string> Words(string text, TextStyle style, double width) =>
        UnitWords.Of(text, joined => style.Face.Width(joined, style.Size) <= width);

    private static IEnumerable<(string Piece, bool First)> WithFirst(ImmutableArray<string> pieces)
    {
        for (var i = 0; i < pieces.Length; i++)
        {
            yield return (pieces[i], i == 0);
        }
    }

    private static ImmutableArray<string> Pieces(string word, TextStyle style, double width)
    {
        if (style.Face.Width(word, style.Size) <= width)
        {
            return [word];
        }

        var pieces = ImmutableArray.CreateBuilder<string>();
        var start = 0;
        while (start < word.Length)
        {
            var end = FullLine(word, start, style, width);
            if (end < word.Length)
            {
                var joint = word.LastIndexOfAny(['-', '/', '_', '.', '–'], end - 1, end - start);
                end = joint > start + ((end - start) / 3) ? joint + 1 : end;
            }

            pieces.Add(word[start..end]);
            start = end;
        }

        return pieces.ToImmutable();
    }

    private static int FullLine(string word, int start, TextStyle style, double width)
    {
        var used = 0.0;
        var end = start;
        while (end < word.Length)
        {
            // Everything outside the basic plane has been replaced, so one char is one character.
            used += style.Face.Width(word.Substring(end, 1), style.Size);
            if (used > width && end > start)
            {
                break;
            }

            end++;
        }

        return end;
    }
}
