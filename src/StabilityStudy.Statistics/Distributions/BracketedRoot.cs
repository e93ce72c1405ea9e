namespace StabilityStudy.Statistics.Distributions;

/// <summary>
/// Root of a rising function inside a bracket: inverse quadratic interpolation where the last three points allow it,
/// halving where they do not.
/// </summary>
/// <remarks>
/// Source: Chandrupatla (1997), Advances in Engineering Software 28:145–149 (cited from memory). The root never leaves its bracket, and the bracket shrinks
/// at every step.
/// </remarks>
internal static class BracketedRoot
{
    /// <summary>Doubles carry 52 bits after the leading one; a narrower bracket holds no further number.</summary>
    private const double Resolution = 1.0 / (1L << 52);

    /// <summary>Finds where a rising function passes zero.</summary>
    /// <param name="rising">A function that does not fall between the two bounds.</param>
    /// <param name="lower">A place where the function is not above zero.</param>
    /// <param name="upper">A place where the function is not below zero.</param>
    /// <param name="smallestScale">Roots smaller than this are found to an absolute, larger ones to a relative resolution of 2⁻⁵².</param>
    public static double Find(
        Func<double, double> rising,
        double lower,
        double upper,
        double smallestScale
    )
    {
        // a is the newest point, b the one on the other side of the root, c the point that a replaced.
        var (a, atA) = (upper, rising(upper));
        var (b, atB) = (lower, rising(lower));
        var fraction = 0.5;
        while (true)
        {
            var (best, atBest) = Math.Abs(atA) < Math.Abs(atB) ? (a, atA) : (b, atB);
            var least = Resolution * Math.Max(Math.Abs(best), smallestScale) / Math.Abs(b - a);
            if (atBest == 0 || !(least < 0.5))
            {
                return best;
            }

            var x = a + (Math.Clamp(fraction, least, 1 - least) * (b - a));
            var atX = rising(x);
            var (c, atC) = (a, atA);
            if (atX > 0 != atA > 0)
            {
                (c, atC) = (b, atB);
                (b, atB) = (a, atA);
            }

            (a, atA) = (x, atX);
            fraction = Fraction(a, atA, b, atB, c, atC);
        }
    }

    /// <summary>Where between a and b to look next: interpolated if the inverse parabola is monotone there, else the middle.</summary>
    private static double Fraction(double a, double atA, double b, double atB, double c, double atC)
    {
        var place = (a - b) / (c - b);
        var height = (atA - atB) / (atC - atB);
        return height * height < place && (1 - height) * (1 - height) < 1 - place
            ? (atA / (atB - atA) * (atC / (atB - atC)))
                + ((c - a) / (b - a) * (atA / (atC - atA)) * (atB / (atC - atB)))
            : 0.5;
    }
}
