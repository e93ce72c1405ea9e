namespace StabilityStudy.Files.Rows;

/// <summary>Reads a result as reported: a number, beyond a limit, or a word for "no result".</summary>
internal static class ResultText
{
    /// <summary>Reads a result.</summary>
    /// <param name="text">The text as read.</param>
    /// <returns>The result, or null with what to write instead.</returns>
    public static (ReportedResult? Result, string Advice) Read(string text)
    {
        if (
            text is [(>= '0' and <= '9') or '-', ..]
            && StrictNumber.Read(text, out var plain) is null
        )
        {
            return (new MeasuredResult(text, plain), "");
        }

        if (FileWords.MissingReasons.TryRead(text.ToUpperInvariant(), out var reason))
        {
            return (new MissingResult(text, reason.Value), "");
        }

        if (text[0] is '<' or '>')
        {
            var side = text[0] == '<' ? CensoredSide.Below : CensoredSide.Above;
            return StrictNumber.Read(text.AsSpan(1), out var limit) is { } limitAdvice
                ? (null, $"after the sign {limitAdvice}")
                : (new CensoredResult(text, side, limit), "");
        }

        var advice = StrictNumber.Read(text, out _);
        return (null, advice is not null && text.Any(char.IsDigit) ? advice : WordAdvice(text));
    }

    /// <summary>Reads a result of a qualitative test: one of its words, without regard to case, or a word for "no result".</summary>
    /// <param name="text">The text as read.</param>
    /// <param name="categories">The words, from the most negative.</param>
    /// <returns>The result, or null with what to write instead.</returns>
    public static (ReportedResult? Result, string Advice) ReadCategory(
        string text,
        ImmutableArray<string> categories
    )
    {
        for (var i = 0; i < categories.Length; i++)
        {
            if (string.Equals(text, categories[i], StringComparison.OrdinalIgnoreCase))
            {
                return (new CategoryResult(text, i), "");
            }
        }

        if (FileWords.MissingReasons.TryRead(text.ToUpperInvariant(), out var reason))
        {
            return (new MissingResult(text, reason.Value), "");
        }

        var words = categories.AddRange(FileWords.MissingReasons.Words.Where(w => w.Length > 0));
        return (
            null,
            $"write one of {string.Join(", ", words)}"
                + (NearestWord.Find(text, words) is { } nearest ? $"; perhaps {nearest}" : "")
        );
    }

    private static string WordAdvice(string text)
    {
        var words = FileWords.MissingReasons.Words.Where(word => word.Length > 0).ToArray();
        return $"write a number, <n, >n, or one of {string.Join(", ", words)}"
            + (NearestWord.Find(text, words) is { } nearest ? $"; perhaps {nearest}" : "");
    }
}
