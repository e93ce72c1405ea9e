namespace StabilityStudy.Files.Rows;

/// <summary>Finds the code that an unknown one may have been: one that has the same number with other zeros, or without its letters, before a merely similar one.</summary>
internal static class NearCode
{
    /// <summary>" Did you mean "x"?" with a leading space and with what differs; empty where no code is near.</summary>
    public static string Question(string code, IEnumerable<string> known)
    {
        var all = known.ToArray();
        var number = NumberOf(code);
        var letters = LettersOf(code);
        if (number.Length > 0)
        {
            var same = all.Where(other => NumberOf(other) == number).ToArray();
            if (same.FirstOrDefault(other => LettersOf(other) == letters) is { } zeros)
            {
                return $" Did you mean \"{zeros}\"? It has the same letters and number, with other zeros or signs; nothing is filled in by itself.";
            }

            if (letters.Length == 0 && same is [var only])
            {
                return $" Did you mean \"{only}\"? The letters before the number are missing here; nothing is filled in by itself.";
            }
        }

        return NearestWord.Question(code, all);
    }

    private static string NumberOf(string code) =>
        string.Concat(code.Where(char.IsAsciiDigit)).TrimStart('0');

    private static string LettersOf(string code) =>
        string.Concat(code.Where(char.IsAsciiLetter)).ToUpperInvariant();
}
