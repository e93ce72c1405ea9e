using StabilityStudy.Core.Text;

namespace StabilityStudy.Reporting.Text;

/// <summary>Breaks text into lines of a number of characters.</summary>
public static class TextLines
{
    /// <summary>Breaks at spaces only: a line feed that a file brought into a sentence is shown and begins no line.</summary>
    public static ImmutableArray<string> WrapLine(string text, int width, string indent = "") =>
        Wrap(UnseenCharacters.Shown(text), width, indent);

    /// <summary>Breaks at spaces and line feeds, never between a number and its unit; a word longer than the line is broken where the line is full.</summary>
    public static ImmutableArray<string> Wrap(string text, int width, string indent = "")
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var part in Visible(text).Split('\n'))
        {
            var line = "";
            var room = width - indent.Length;
            foreach (var word in UnitWords.Of(part, joined => Length(joined) <= room))
            {
                foreach (var piece in Pieces(word, room))
                {
                    var joined = line.Length == 0 ? piece : line + " " + piece;
                    if (line.Length > 0 && Length(joined) > room)
                    {
                        lines.Add(indent + line);
                        joined = piece;
                    }

                    line = joined;
                }
            }

            lines.Add(indent + line);
        }

        return lines.ToImmutable();
    }

    /// <summary>Number of characters as a reader counts them, accents included in their letters.</summary>
    public static int Length(string text) => new StringInfo(text).LengthInTextElements;

    /// <summary>Fills up with spaces.</summary>
    public static string Padded(string text, int width, bool atRight)
    {
        var missing = new string(' ', Math.Max(0, width - Length(text)));
        return atRight ? text + missing : missing + text;
    }

    /// <summary>Characters that cannot be seen become visible, so that none can steer a terminal or hide another; line feeds stay, and tabs become spaces.</summary>
    public static string Visible(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return UnseenCharacters.ShownLines(text.Replace('\t', ' '));
    }

    private static IEnumerable<string> Pieces(string word, int width)
    {
        var elements = StringInfo.ParseCombiningCharacters(word);
        for (var start = 0; start < elements.Length; start += width)
        {
            var end = start + width < elements.Length ? elements[start + width] : word.Length;
            yield return word[elements[start]..end];
        }
    }
}
