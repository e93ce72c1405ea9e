namespace StabilityStudy.Statistics.Regression;

/// <summary>What every method on pairs of doubles asks of its caller, in one place.</summary>
internal static class PairedValues
{
    /// <summary>Squares and products of larger numbers would overflow a double in the sums of a fit.</summary>
    private const double LargestMagnitude = 1e100;

    /// <summary>Requires equal lengths and finite values.</summary>
    /// <exception cref="ArgumentException">The lengths differ, or a value is not finite or is beyond ±10¹⁰⁰.</exception>
    public static void Require(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException("Each first member needs one second member.", nameof(y));
        }

        RequireFinite(x, nameof(x));
        RequireFinite(y, nameof(y));
    }

    /// <summary>Requires a ratio of error variances that is a finite number above zero.</summary>
    /// <exception cref="ArgumentException">The ratio is not finite or not above zero.</exception>
    public static void RequireErrorVarianceRatio(double errorVarianceRatio)
    {
        if (!(errorVarianceRatio > 0 && double.IsFinite(errorVarianceRatio)))
        {
            throw new ArgumentException(
                "A ratio of error variances is a finite number above zero.",
                nameof(errorVarianceRatio)
            );
        }
    }

    /// <summary>Whether all values are the same number; decided on the values, because their centered sum of squares may round to more than zero.</summary>
    public static bool AreConstant(ReadOnlySpan<double> values) =>
        values.IsEmpty || !values.ContainsAnyExcept(values[0]);

    /// <summary>Too few pairs or a constant x, in this order; absent when a line can be fitted.</summary>
    public static Refusal? WhyNoLine(ReadOnlySpan<double> x, int fewestPairs, Refusal tooFew) =>
        x.Length < fewestPairs ? tooFew
        : AreConstant(x) ? Refusal.SameBaselines
        : null;

    private static void RequireFinite(ReadOnlySpan<double> values, string parameter)
    {
        foreach (var value in values)
        {
            if (!(Math.Abs(value) <= LargestMagnitude))
            {
                throw new ArgumentException("Every value must be a finite number.", parameter);
            }
        }
    }
}
