using System.Text;

namespace StabilityStudy.Reporting.Fonts;

/// <summary>Turns any text into one that the report's fonts can draw, without losing a character unseen.</summary>
internal static class PrintableText
{
    /// <summary>Stands for a character that the fonts do not have.</summary>
    public const char Replacement = '□';

    private static readonly Rune LineFeed = new('\n');

    /// <summary>
    /// Composes accents, makes tabs spaces and every other character that the face lacks, control characters
    /// included, a visible box. Line feeds stay; a carriage return before one is dropped.
    /// </summary>
    public static string For(FontFace face, string text)
    {
        if (text.All(c => c is >= ' ' and <= '~'))
        {
            return text;
        }

        var printable = new StringBuilder(text.Length);
        foreach (var rune in Composed(text.Replace("\r\n", "\n", StringComparison.Ordinal)))
        {
            if (rune == LineFeed || face.Covers(rune))
            {
                printable.Append(rune.ToString());
            }
            else
            {
                printable.Append(rune.Value == '\t' ? ' ' : Replacement);
            }
        }

        return printable.ToString();
    }

    private static StringRuneEnumerator Composed(string text)
    {
        // A lone surrogate cannot be normalized; enumerating runes makes it U+FFFD, which becomes a box.
        var wellFormed = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            wellFormed.Append(rune.ToString());
        }

        return wellFormed.ToString().Normalize(NormalizationForm.FormC).EnumerateRunes();
    }
}
