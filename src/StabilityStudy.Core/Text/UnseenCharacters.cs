using System.Buffers;
using System.Text;

namespace StabilityStudy.Core.Text;

/// <summary>
/// Characters that a reader does not see but that steer a screen, reorder or hide other text: control characters, direction marks, zero-width and other
/// format characters, separators of lines, and blank letters. A text from a file that holds one is not shown as it is.
/// </summary>
public static class UnseenCharacters
{
    // Letters and marks without ink (Unicode Standard 16, property Default_Ignorable_Code_Point, those that are no format characters; and the empty Braille pattern).
    private static readonly ImmutableArray<(int First, int Last)> Blank =
    [
        (0x034F, 0x034F),
        (0x115F, 0x1160),
        (0x17B4, 0x17B5),
        (0x180B, 0x180F),
        (0x2800, 0x2800),
        (0x3164, 0x3164),
        (0xFE00, 0xFE0F),
        (0xFFA0, 0xFFA0),
        (0xE0000, 0xE0FFF),
    ];

    // What hardly any text goes beyond. Such runs of characters are taken as they are, however long the text is.
    private static readonly SearchValues<char> s_plain = SearchValues.Create(PlainCharacters());

    private static readonly SearchValues<char> s_plainOrLineFeed = SearchValues.Create([
        .. PlainCharacters(),
        '\n',
    ]);

    /// <summary>Whether a character cannot be seen. A plain space can, by the room that it takes.</summary>
    public static bool IsUnseen(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.PrivateUse
                or UnicodeCategory.OtherNotAssigned
        || Blank.Any(range => rune.Value >= range.First && rune.Value <= range.Last);

    /// <summary>The first character that cannot be seen; null when all can.</summary>
    public static Rune? First(ReadOnlySpan<char> text)
    {
        if (!text.ContainsAnyExcept(s_plain))
        {
            return null;
        }

        foreach (var rune in text.EnumerateRunes())
        {
            if (IsUnseen(rune))
            {
                return rune;
            }
        }

        return null;
    }

    /// <summary>The name of a character as the Unicode Standard writes it: "U+202E".</summary>
    public static string NameOf(Rune rune) => FormattableString.Invariant($"U+{rune.Value:X4}");

    /// <summary>The text with every character that cannot be seen, line breaks included, written in its place as "[U+202E]".</summary>
    public static string Shown(string text) => Shown(text, keepsLines: false);

    /// <summary>The same for a text of several lines: line feeds, alone or after a carriage return, stay.</summary>
    public static string ShownLines(string text) => Shown(text, keepsLines: true);

    /// <summary>JSON in which every such character is escaped; line feeds between the values stay.</summary>
    /// <param name="json">JSON as a writer gave it, which escapes the line feeds inside a value.</param>
    public static string EscapedJson(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Replaced(
            json,
            keepsLines: true,
            static (text, rune) =>
            {
                Span<char> units = stackalloc char[2];
                foreach (var unit in units[..rune.EncodeToUtf16(units)])
                {
                    text.Append(CultureInfo.InvariantCulture, $"\\u{(int)unit:x4}");
                }
            }
        );
    }

    private static string Shown(string text, bool keepsLines)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Replaced(
            keepsLines ? text.Replace("\r\n", "\n", StringComparison.Ordinal) : text,
            keepsLines,
            static (shown, rune) => shown.Append('[').Append(NameOf(rune)).Append(']')
        );
    }

    private static string Replaced(
        string text,
        bool keepsLines,
        Action<StringBuilder, Rune> replace
    )
    {
        var plain = keepsLines ? s_plainOrLineFeed : s_plain;
        var rest = text.AsSpan();
        if (!rest.ContainsAnyExcept(plain))
        {
            return text;
        }

        // Half of a character becomes the replacement character, so that the next text cannot bring the other half.
        var result = new StringBuilder(text.Length + 16);
        Span<char> units = stackalloc char[2];
        while (rest.IndexOfAnyExcept(plain) is >= 0 and var next)
        {
            result.Append(rest[..next]);
            rest = rest[next..];
            Rune.DecodeFromUtf16(rest, out var rune, out var read);
            rest = rest[read..];
            if (IsUnseen(rune))
            {
                replace(result, rune);
            }
            else
            {
                result.Append(units[..rune.EncodeToUtf16(units)]);
            }
        }

        return result.Append(rest).ToString();
    }

    private static ReadOnlySpan<char> PlainCharacters() =>
        string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(code => (char)code));
}
