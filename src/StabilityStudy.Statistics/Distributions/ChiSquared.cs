using MathNet.Numerics;

namespace StabilityStudy.Statistics.Distributions;

/// <summary>The χ² distribution: a sum of squared standard normal variables.</summary>
/// <remarks>
/// P(χ² &gt; c) = Q(ν/2, c/2), the regularized upper incomplete gamma function. Source: Abramowitz and Stegun (1964), equation 26.4.19 (cited from memory).
/// </remarks>
internal static class ChiSquared
{
    /// <summary>Quantiles smaller than this are found to an absolute resolution only.</summary>
    private const double SmallestScale = 1e-300;

    /// <summary>Probability that a χ² variable exceeds a value of at least 0.</summary>
    public static double UpperTail(double value, double degreesOfFreedom) =>
        value == 0 ? 1 : SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, value / 2);

    /// <summary>The value that a χ² variable exceeds with a probability strictly between 0 and 1.</summary>
    public static double UpperQuantile(double probability, double degreesOfFreedom)
    {
        var upper = degreesOfFreedom;
        while (UpperTail(upper, degreesOfFreedom) > probability)
        {
            upper *= 2;
        }

        return BracketedRoot.Find(
            value => probability - UpperTail(value, degreesOfFreedom),
            0,
            upper,
            SmallestScale
        );
    }
}
