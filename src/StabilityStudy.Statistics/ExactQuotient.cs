namespace StabilityStudy.Statistics;

/// <summary>
/// Quotient of two whole numbers as a double. Equal fractions give the same bits whatever scale they were written on:
/// 1/20 and 10/200.
/// </summary>
internal static class ExactQuotient
{
    /// <summary>Up to here every whole number is a double (2⁵³).</summary>
    public const long LargestExact = 1L << 53;

    /// <summary>Divides; the denominator is not zero.</summary>
    public static double Of(Int128 numerator, Int128 denominator)
    {
        if (IsExact(numerator) && IsExact(denominator))
        {
            // Division rounds the true quotient of two exact doubles, which lowest terms would not change.
            return (double)(long)numerator / (long)denominator;
        }

        var common = CommonDivisor(numerator, denominator);
        return (double)(numerator / common) / (double)(denominator / common);
    }

    /// <summary>The greatest common divisor (Euclid), never negative; that of a number and zero is the number.</summary>
    public static Int128 CommonDivisor(Int128 first, Int128 second)
    {
        var (a, b) = (Int128.Abs(first), Int128.Abs(second));
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    private static bool IsExact(Int128 value) => value >= -LargestExact && value <= LargestExact;
}
