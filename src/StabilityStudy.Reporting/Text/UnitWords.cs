namespace StabilityStudy.Reporting.Text;

/// <summary>The words of a text; a number and its unit are one.</summary>
internal static class UnitWords
{
    /// <summary>The words between spaces.</summary>
    /// <param name="text">Text without line feeds.</param>
    /// <param name="fits">Whether a line can hold a number with its unit; where it cannot, they are two words.</param>
    public static List<string> Of(string text, Func<string, bool> fits)
    {
        var words = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && IsUnitAfter(words[^1], word) && fits($"{words[^1]} {word}"))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    private static bool IsUnitAfter(string before, string word) =>
        word.TrimEnd('.', ',', ';', ':', ')', '?') switch
        {
            "%" => true,
            "°C" or "h" or "s" or "min" or "d" or "mL" or "g/L" => char.IsAsciiDigit(before[^1]),
            _ => false,
        };
}
