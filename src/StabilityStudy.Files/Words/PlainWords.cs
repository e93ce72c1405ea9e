using System.Text;

namespace StabilityStudy.Files.Words;

/// <summary>Words as they are compared: without case, accents, signs and what stands in brackets behind them.</summary>
internal static class PlainWords
{
    /// <summary>The words of a text, each of letters or of digits: "Abnahme-Zeit 6h (UTC)" is "abnahme", "zeit", "6", "h".</summary>
    public static ImmutableArray<string> Of(string text)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        var word = new StringBuilder();
        foreach (var c in WithoutBrackets(text).Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark)
            {
                continue;
            }

            var isKept = char.IsLetter(c) || char.IsAsciiDigit(c) || c == '%';
            if (word.Length > 0 && (!isKept || char.IsAsciiDigit(c) != char.IsAsciiDigit(word[^1])))
            {
                words.Add(word.ToString());
                word.Clear();
            }

            if (isKept)
            {
                word.Append(char.ToLowerInvariant(c));
            }
        }

        if (word.Length > 0)
        {
            words.Add(word.ToString());
        }

        return words.ToImmutable();
    }

    /// <summary>The words joined by spaces.</summary>
    public static string Joined(string text) => string.Join(' ', Of(text));

    /// <summary>The words without anything between them.</summary>
    public static string Compact(string text) => string.Concat(Of(text));

    // What stands behind a bracket belongs to the name: "aPTT (s) 6 h".
    private static string WithoutBrackets(string text)
    {
        if (text.IndexOfAny(['(', '[']) <= 0)
        {
            return text;
        }

        var kept = new StringBuilder();
        var depth = 0;
        foreach (var c in text)
        {
            if (c is '(' or '[' && kept.Length > 0)
            {
                depth++;
            }
            else if (depth == 0)
            {
                kept.Append(c);
            }
            else if (c is ')' or ']' && --depth == 0)
            {
                kept.Append(' ');
            }
        }

        return kept.ToString();
    }
}
