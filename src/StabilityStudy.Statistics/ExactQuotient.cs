namespace StabilityStudy.Statistics;

/// <summary>
/// Quotient of two whole numbers as a double. Both are divided by their greatest common divisor first, so that equal
/// fractions give the same bits whatever scale they were written on: 1/20 and 10/200.
/// </summary>
internal static class ExactQuotient
{
    /// <summary>Divides; the denominator is not zero.</summary>
    public static double Of(Int128 numerator, Int128 denominator)
    {
        var (a, b) = (Int128.Abs(numerator), Int128.Abs(denominator));
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return (double)(numerator / a) / (double)(denominator / a);
    }
}
