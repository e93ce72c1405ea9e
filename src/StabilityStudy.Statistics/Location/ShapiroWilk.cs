namespace StabilityStudy.Statistics.Location;

/// <summary>The test of Shapiro and Wilk for a normal sample.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="W">The statistic, at most 1; small values speak against normality.</param>
/// <param name="PValue">Probability of a W as small or smaller for a normal sample.</param>
public sealed record NormalityTest(int Count, double W, double PValue);

/// <summary>Shapiro–Wilk test by Royston's approximation. A description: a large p value does not show that the values are normal.</summary>
/// <remarks>
/// W = (Σaᵢx₍ᵢ₎)²/Σ(x − x̄)²; weights from Blom scores Φ⁻¹((i − 3/8)/(n + 1/4)), the outer one or two by polynomials in 1/√n; p from a normal transformation of ln(1 − W).
/// Source: Shapiro and Wilk (1965), Biometrika 52:591–611; Royston (1995), Applied Statistics 44:547–551, algorithm AS R94 (cited from memory; checked against R).
/// Assumptions: independent values. Rounding to a coarse increment makes ties, which lower W and p. Numerical limits: p has about two to three true digits by
/// construction of the approximation; at n = 3 it is exact.
/// </remarks>
public static class ShapiroWilk
{
    private const int FewestValues = 3;

    /// <summary>Up to here the transformation is ln(γ − ln(1 − W)), beyond ln(1 − W) itself.</summary>
    private const int LargestSmall = 11;

    /// <summary>W at n = 3 is never below this.</summary>
    private const double LeastWOfThree = 0.75;

    /// <summary>Computes the test.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <returns>The test; or too few values (n &lt; 3), too many values (n &gt; 5,000), or zero spread.</returns>
    /// <exception cref="ArgumentException">A value is not a number.</exception>
    public static Estimate<NormalityTest> Compute(ReadOnlySpan<double> values)
    {
        Require.Numbers(values, nameof(values));
        if (values.Length < FewestValues)
        {
            return Estimate.Refused<NormalityTest>(Refusal.TooFewForNormality);
        }

        if (values.Length > LargestSample.Normality)
        {
            return Estimate.Refused<NormalityTest>(Refusal.TooManyForNormality);
        }

        var moments = Moments.Of(values);
        if (moments.IsConstant)
        {
            return Estimate.Refused<NormalityTest>(Refusal.SameValues);
        }

        var sorted = values.ToArray();
        Array.Sort(sorted);
        var distance = OneMinusW(sorted, moments);
        return Estimate.Of(
            new NormalityTest(sorted.Length, 1 - distance, PValue(sorted.Length, distance))
        );
    }

    /// <summary>1 − W as a product of two factors, so that a W near 1 keeps its digits.</summary>
    private static double OneMinusW(double[] sorted, Moments moments)
    {
        var n = sorted.Length;
        var half = Weights(n);
        var range = moments.Maximum - moments.Minimum;
        var squaresOfWeights = 0.0;
        var squares = 0.0;
        var products = 0.0;
        for (var i = 0; i < n; i++)
        {
            var fromEnd = Math.Min(i, n - 1 - i);
            var weight = fromEnd < half.Length ? half[fromEnd] : 0;
            weight = i < n - 1 - i ? -weight : weight;
            var deviation = (sorted[i] - moments.Mean) / range;
            squaresOfWeights += weight * weight;
            squares += deviation * deviation;
            products += weight * deviation;
        }

        var largest = Math.Sqrt(squaresOfWeights * squares);
        return Math.Max(0, (largest - products) * (largest + products))
            / (squaresOfWeights * squares);
    }

    /// <summary>The positive weights of the upper half, the outermost first.</summary>
    private static double[] Weights(int n)
    {
        if (n == FewestValues)
        {
            return [Math.Sqrt(0.5)];
        }

        var scores = new double[n / 2];
        for (var i = 0; i < scores.Length; i++)
        {
            scores[i] = -Normal.Quantile((i + 1 - 0.375) / (n + 0.25));
        }

        var squares = 2 * scores.Sum(score => score * score);
        var root = Math.Sqrt(squares);
        var u = 1 / Math.Sqrt(n);
        var outer = n > 5 ? 2 : 1;
        double[] fitted =
        [
            (scores[0] / root)
                + Polynomial(u, 0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056),
            (scores[1] / root)
                + Polynomial(u, 0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633),
        ];
        var left = squares;
        var leftOfOne = 1.0;
        for (var i = 0; i < outer; i++)
        {
            left -= 2 * scores[i] * scores[i];
            leftOfOne -= 2 * fitted[i] * fitted[i];
        }

        var scale = Math.Sqrt(left / leftOfOne);
        for (var i = 0; i < scores.Length; i++)
        {
            scores[i] = i < outer ? fitted[i] : scores[i] / scale;
        }

        return scores;
    }

    private static double PValue(int n, double distance)
    {
        if (n == FewestValues)
        {
            var angle = Math.Asin(Math.Sqrt(1 - distance)) - Math.Asin(Math.Sqrt(LeastWOfThree));
            return Math.Clamp(6 / Math.PI * angle, 0, 1);
        }

        if (distance == 0)
        {
            return 1;
        }

        var y = Math.Log(distance);
        if (n <= LargestSmall)
        {
            var gamma = Polynomial(n, -2.273, 0.459);
            if (y >= gamma)
            {
                return 0;
            }

            return Normal.Cdf(
                (Math.Log(gamma - y) + Polynomial(n, 0.544, -0.39978, 0.025054, -6.714e-4))
                    / Math.Exp(Polynomial(n, 1.3822, -0.77857, 0.062767, -0.0020322))
            );
        }

        var logN = Math.Log(n);
        return Normal.Cdf(
            (Polynomial(logN, -1.5861, -0.31082, -0.083751, 0.0038915) - y)
                / Math.Exp(Polynomial(logN, -0.4803, -0.082676, 0.0030302))
        );
    }

    /// <summary>Value of a polynomial, the constant coefficient first.</summary>
    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = (sum * x) + coefficients[i];
        }

        return sum;
    }
}
