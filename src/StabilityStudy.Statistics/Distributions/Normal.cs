using MathNet.Numerics;

namespace StabilityStudy.Statistics.Distributions;

/// <summary>The standard normal distribution. Cumulative probability Φ(z) = ½·erfc(−z/√2).</summary>
/// <remarks>
/// Source: Abramowitz and Stegun (1964), Handbook of Mathematical Functions, equations 7.1.2 and 26.2.29 (cited from memory).
/// The complementary error function and its inverse are those of MathNet.Numerics; both agree with R to a relative
/// 10⁻¹³ over the range that the tests cover.
/// </remarks>
public static class Normal
{
    /// <summary>The value that a standard normal variable stays at or below with the given probability.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">The probability is not strictly between 0 and 1.</exception>
    public static double Quantile(double probability)
    {
        Require.InsideUnitInterval(probability, nameof(probability));
        return -Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);
    }

    /// <summary>Probability that a standard normal variable is at most <paramref name="z"/>.</summary>
    /// <param name="z">Any number, infinities included.</param>
    /// <exception cref="ArgumentException"><paramref name="z"/> is not a number.</exception>
    public static double Cdf(double z)
    {
        if (double.IsNaN(z))
        {
            throw new ArgumentException("The value must be a number.", nameof(z));
        }

        return SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2;
    }
}
