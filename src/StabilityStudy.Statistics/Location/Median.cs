using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Sample median with the exact interval [x(k), x(n + 1 − k)] of the sign test, k the smallest q with
/// P(Binomial(n, ½) ≤ q) ≥ (1 − level)/2.
/// </summary>
/// <remarks>
/// Source: Thompson (1936), Annals of Mathematical Statistics 7:122–128; Hollander and Wolfe (1973), Nonparametric
/// Statistical Methods, section 3.6 (both cited from memory). The level achieved, 1 − 2·P(Binomial(n, ½) ≤ k − 1), is at least the one asked for.
/// Assumptions: independent values of one continuous distribution; with ties the achieved level is a lower bound.
/// </remarks>
public static class Median
{
    /// <summary>Up to here (½)ⁿ is an ordinary double, so that the probabilities can be summed from it.</summary>
    private const int LargestSummed = 1000;

    /// <summary>Median and interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// No value at all: <see cref="AssumptionCode.TooFewValues"/>. Rank k = 0 (for 95 % fewer than six values):
    /// <see cref="AssumptionCode.NoIntervalAtThisSize"/> with the value alone; the level is never lowered instead.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<OrderInterval> WithInterval(
        ReadOnlySpan<double> values,
        double confidenceLevel
    )
    {
        if (OrderInterval.WhyNone(values, confidenceLevel) is { } refused)
        {
            return refused;
        }

        // Found by parting the values, which takes less than to sort them all.
        var parted = values.ToArray();
        var middle = MiddleValue.Of(parted);
        var (rank, below) = Rank(values.Length, (1 - confidenceLevel) / 2);
        return rank == 0
            ? OrderInterval.Unreachable(middle)
            : Estimate.Of(
                new OrderInterval(
                    parted.Length,
                    middle,
                    1 - (2 * below),
                    MiddleValue.AtRank(parted, rank - 1),
                    MiddleValue.AtRank(parted, parted.Length - rank),
                    rank
                )
            );
    }

    /// <summary>The smallest rank whose probability reaches the tail, and the probability below it.</summary>
    private static (int Rank, double Below) Rank(int n, double tail) =>
        n <= LargestSummed ? Summed(n, tail) : Searched(n, tail);

    private static (int Rank, double Below) Summed(int n, double tail)
    {
        var below = 0.0;
        var term = Math.ScaleB(1, -n);
        for (var rank = 0; ; rank++)
        {
            if (below + term >= tail)
            {
                return (rank, below);
            }

            below += term;
            term = term * (n - rank) / (rank + 1);
        }
    }

    private static (int Rank, double Below) Searched(int n, double tail)
    {
        var (tooLow, reaching) = (-1, n / 2);
        while (reaching - tooLow > 1)
        {
            var middle = tooLow + ((reaching - tooLow) / 2);
            if (Binomial.Cdf(middle, n, 0.5) >= tail)
            {
                reaching = middle;
            }
            else
            {
                tooLow = middle;
            }
        }

        return (reaching, Binomial.Cdf(reaching - 1, n, 0.5));
    }
}
