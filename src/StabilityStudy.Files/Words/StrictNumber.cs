using StabilityStudy.Statistics;

namespace StabilityStudy.Files.Words;

/// <summary>Decimal numbers as the files write them: ASCII digits, at most one point, a leading minus; nothing else.</summary>
internal static class StrictNumber
{
    private const int MostDecimals = ExactPairs.MostDecimals;
    private const decimal Largest = ExactPairs.Largest;

    /// <summary>What a number may be, in words.</summary>
    public static readonly string Bounds = FormattableString.Invariant(
        $"A number has at most {MostDecimals} decimals and is at most {Largest / 1_000_000} million, above or below zero"
    );

    /// <summary>Reads a number and keeps its decimals as written (7.50 has two).</summary>
    /// <returns>Null when the text is a number; otherwise what to write instead.</returns>
    public static string? Read(ReadOnlySpan<char> text, out decimal number)
    {
        number = 0;
        if (!HasNumberShape(text))
        {
            return Advice(text.ToString());
        }

        var point = text.IndexOf('.');
        if (point >= 0 && text.Length - point - 1 > MostDecimals)
        {
            return FormattableString.Invariant($"write at most {MostDecimals} decimals");
        }

        return
            decimal.TryParse(
                text,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out number
            )
            && Math.Abs(number) <= Largest
            ? null
            : FormattableString.Invariant(
                $"write a number of at most {Largest / 1_000_000} million"
            );
    }

    /// <summary>Decimals as written.</summary>
    public static int Decimals(decimal number) => number.Scale;

    private static bool HasNumberShape(ReadOnlySpan<char> text)
    {
        var rest = text;
        if (rest is ['-', ..])
        {
            rest = rest[1..];
        }

        var point = rest.IndexOf('.');
        return point < 0
            ? IsDigits(rest)
            : IsDigits(rest[..point]) && IsDigits(rest[(point + 1)..]);
    }

    private static bool IsDigits(ReadOnlySpan<char> text) =>
        !text.IsEmpty && !text.ContainsAnyExceptInRange('0', '9');

    private static string Advice(string text) =>
        text switch
        {
            _ when text.Contains(',', StringComparison.Ordinal) =>
                "write the decimal sign as a point, and no thousands separator",
            _ when text.Any(char.IsWhiteSpace) => "write the number without spaces",
            _ when text.StartsWith('+') => "write the number without the plus sign",
            _ when text.Any(c => c > '\u007f' && char.IsDigit(c)) => "write the digits as 0 to 9",
            _ when text.Length > 0 && char.IsAsciiDigit(text[0]) =>
                "write plain digits with at most one decimal point, no exponent and no unit",
            _ => "write digits, with a decimal point where needed",
        };
}
