namespace StabilityStudy.Statistics.Distributions;

/// <summary>
/// Regularized incomplete beta function I(a, b) at x. Both x and y = 1 − x are arguments, because a caller often knows the
/// small one of them to more digits than a subtraction from 1 would leave.
/// </summary>
/// <remarks>
/// Continued fraction: Abramowitz and Stegun (1964), equation 26.5.8 (cited from memory), evaluated by the modified Lentz method, on the side where it
/// converges fast. The factor before it, x^a·y^b·Γ(a + b)/(Γ(a)·Γ(b)), is written with deviances and Stirling remainders so that
/// large a and b lose no digits: Loader (2000), Fast and accurate computation of binomial probabilities, section 3 (cited from memory).
/// Numerical limits: relative error of the smaller of I and 1 − I below 10⁻¹² for a + b up to 10⁴.
/// </remarks>
internal static class IncompleteBeta
{
    /// <summary>Below this a fraction step no longer changes the last bit.</summary>
    private const double Resolution = 1.0 / (1L << 53);

    /// <summary>Keeps a vanishing denominator of the Lentz method away from zero.</summary>
    private const double Tiny = 1e-300;

    /// <summary>The fraction needs about √(a + b) steps; this is far more than a + b = 10⁸ takes.</summary>
    private const int MostSteps = 1_000_000;

    /// <summary>I(a, b) at x, for a and b above zero, x and y from 0 to 1 with x + y = 1.</summary>
    public static double Regularized(double a, double b, double x, double y)
    {
        if (x == 0 || y == 0)
        {
            return y == 0 ? 1 : 0;
        }

        var front = Front(a, b, x, y);
        return x <= (a + 1) / (a + b + 2)
            ? front * Fraction(a, b, x) / a
            : 1 - (front * Fraction(b, a, y) / b);
    }

    private static double Front(double a, double b, double x, double y)
    {
        var total = a + b;
        var excess = (a * y) - (b * x);
        return Math.Sqrt(a * b / (2 * Math.PI * total))
            * Math.Exp(
                StirlingRemainder(total)
                    - StirlingRemainder(a)
                    - StirlingRemainder(b)
                    - Deviance(a, total * x, excess)
                    - Deviance(b, total * y, -excess)
            );
    }

    private static double Fraction(double a, double b, double x)
    {
        var c = 1.0;
        var d = 1 / AwayFromZero(1 - ((a + b) * x / (a + 1)));
        var value = d;
        for (var m = 1; m <= MostSteps; m++)
        {
            var place = a + (2.0 * m);
            var even = m * (b - m) * x / ((place - 1) * place);
            d = 1 / AwayFromZero(1 + (even * d));
            c = AwayFromZero(1 + (even / c));
            value *= c * d;

            var odd = -(a + m) * (a + b + m) * x / (place * (place + 1));
            d = 1 / AwayFromZero(1 + (odd * d));
            c = AwayFromZero(1 + (odd / c));
            value *= c * d;
            if (Math.Abs((c * d) - 1) <= 2 * Resolution)
            {
                return value;
            }
        }

        throw new InvalidOperationException("The continued fraction did not settle.");
    }

    private static double AwayFromZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;

    /// <summary>observed·ln(observed/expected) + expected − observed, by a series where the terms would cancel.</summary>
    private static double Deviance(double observed, double expected, double excess)
    {
        if (Math.Abs(excess) >= 0.1 * (observed + expected))
        {
            return (observed * Math.Log(observed / expected)) - excess;
        }

        var ratio = excess / (observed + expected);
        var sum = excess * ratio;
        var power = 2 * observed * ratio;
        for (var odd = 3; ; odd += 2)
        {
            power *= ratio * ratio;
            var next = sum + (power / odd);
            if (next == sum)
            {
                return sum;
            }

            sum = next;
        }
    }

    /// <summary>ln Γ(z) − (z − ½)·ln z + z − ½·ln 2π; the asymptotic series from 15 on, the recursion of Γ below.</summary>
    private static double StirlingRemainder(double z)
    {
        var product = 1.0;
        var shifted = z;
        while (shifted < 15)
        {
            product *= shifted;
            shifted += 1;
        }

        var square = 1 / (shifted * shifted);
        var series =
            (
                (1.0 / 12)
                - (
                    square
                    * (
                        (1.0 / 360)
                        - (
                            square
                            * ((1.0 / 1260) - (square * ((1.0 / 1680) - (square * (1.0 / 1188)))))
                        )
                    )
                )
            ) / shifted;
        return shifted == z
            ? series
            : series
                + ((shifted - 0.5) * Math.Log(shifted))
                - (shifted - z)
                - ((z - 0.5) * Math.Log(z))
                - Math.Log(product);
    }
}
