namespace StabilityStudy.Statistics.Distributions;

/// <summary>
/// Root of a monotone function by halving. Slower than a derivative method and chosen for that reason only: it cannot
/// leave its bracket, it ends after a known number of steps and it gives the same bits on every platform that gives
/// the same function values.
/// </summary>
internal static class Bisection
{
    /// <summary>Doubles carry 52 bits after the leading one; a narrower bracket holds no further number.</summary>
    private const double Resolution = 1.0 / (1L << 52);

    /// <summary>Finds where a rising function passes zero.</summary>
    /// <param name="rising">A function that does not fall between the two bounds.</param>
    /// <param name="lower">A place where the function is not above zero.</param>
    /// <param name="upper">A place where the function is not below zero.</param>
    /// <param name="smallestScale">Roots smaller than this are found to an absolute, larger ones to a relative resolution of 2⁻⁵².</param>
    public static double Root(
        Func<double, double> rising,
        double lower,
        double upper,
        double smallestScale
    )
    {
        while (true)
        {
            var middle = lower + ((upper - lower) / 2);
            var scale = Math.Max(smallestScale, Math.Max(Math.Abs(lower), Math.Abs(upper)));
            if (middle <= lower || middle >= upper || upper - lower <= Resolution * scale)
            {
                return middle;
            }

            if (rising(middle) < 0)
            {
                lower = middle;
            }
            else
            {
                upper = middle;
            }
        }
    }
}
