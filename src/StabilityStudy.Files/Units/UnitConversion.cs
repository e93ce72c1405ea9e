using StabilityStudy.Statistics;

namespace StabilityStudy.Files.Units;

/// <summary>How results in one unit become those of another unit of the same kind, exactly.</summary>
/// <param name="From">The unit of the file.</param>
/// <param name="To">The unit in which they are read.</param>
/// <param name="Times">By what a result is multiplied.</param>
/// <param name="Over">By what it is divided.</param>
internal sealed record UnitConversion(string From, string To, decimal Times, decimal Over)
{
    /// <summary>The conversion; null where the units do not measure the same, or are not in the table.</summary>
    public static UnitConversion? Of(string from, string to)
    {
        if (
            UnitTable.Find(from) is not { } first
            || UnitTable.Find(to) is not { } second
            || first.Kind != second.Kind
        )
        {
            return null;
        }

        return first.Size >= second.Size
            ? new(from, to, first.Size / second.Size, 1)
            : new(from, to, 1, second.Size / first.Size);
    }

    /// <summary>A result in the other unit, with its sign; what is no number is left as it stands, and so is what has no exact decimal form.</summary>
    public string Apply(string text)
    {
        var sign = text is ['<' or '>', ..] ? text[..1] : "";
        if (StrictNumber.Read(text.AsSpan(sign.Length), out var number) is not null)
        {
            return text;
        }

        // Decimals that only the multiplication wrote are dropped: 3.1 g/L are 310 mg/dL.
        var decimals = number.Scale;
        var converted = Over == 1 ? number * Times : number / Over;
        for (var step = Times; step >= 10 && decimals > 0; step /= 10)
        {
            decimals--;
        }

        var written = converted.ToString(CultureInfo.InvariantCulture);
        if (Over == 1)
        {
            var least = Normalized(converted).Scale;
            written = converted.ToString(
                "F" + Math.Max(decimals, least).ToString(CultureInfo.InvariantCulture),
                CultureInfo.InvariantCulture
            );
        }
        else if (IsPowerOfTen(Over))
        {
            written = converted.ToString(
                "F" + (decimals + Digits(Over) - 1).ToString(CultureInfo.InvariantCulture),
                CultureInfo.InvariantCulture
            );
        }

        return
            StrictNumber.Read(written, out var read) is null
            && read * (Over == 1 ? 1 : Over) == number * Times
            && StrictNumber.Decimals(read) <= ExactPairs.MostDecimals
            ? sign + written
            : $"{text} {From}";
    }

    private static decimal Normalized(decimal number) => number / 1.0000000000000000000000000000m;

    private static bool IsPowerOfTen(decimal number)
    {
        while (number >= 10 && number % 10 == 0)
        {
            number /= 10;
        }

        return number == 1;
    }

    private static int Digits(decimal number) =>
        decimal.Truncate(number).ToString(CultureInfo.InvariantCulture).Length;
}
