namespace StabilityStudy.Statistics.Location;

/// <summary>Arithmetic mean with the t interval mean ± t((1 + level)/2; n − 1)·s/√n.</summary>
/// <remarks>
/// Source: Student (1908), Biometrika 6:1–25 (cited from memory).
/// Assumptions: the values are independent and their mean is close to normally distributed. Values that share a
/// cluster (a day, a run) are not independent: <see cref="ClusteredMean"/>.
/// </remarks>
public static class ArithmeticMean
{
    /// <summary>Computes mean and interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to. Ties and zeros are ordinary values.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// In the unit of the values. Fewer than two values: <see cref="AssumptionCode.TooFewValues"/>. All values the same: an
    /// interval without width and the note <see cref="AssumptionCode.ZeroSpread"/>, since rounding may hide the true spread.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<MeanInterval> WithInterval(
        ReadOnlySpan<double> values,
        double confidenceLevel
    )
    {
        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (values.Length < 2)
        {
            return Estimate.Refused<MeanInterval>(Refusal.TooFewForMean);
        }

        var moments = Moments.Of(values);
        return new(OfMoments(moments, confidenceLevel), null, NotesOf(moments));
    }

    /// <summary>The same of values whose moments are known.</summary>
    internal static MeanInterval OfMoments(Moments moments, double confidenceLevel)
    {
        var standardError = moments.StandardDeviation / Math.Sqrt(moments.Count);
        var reach = StudentT.Quantile((1 + confidenceLevel) / 2, moments.Count - 1) * standardError;
        return new MeanInterval(
            moments.Count,
            moments.Mean,
            moments.StandardDeviation,
            standardError,
            moments.Count - 1,
            confidenceLevel,
            moments.Mean - reach,
            moments.Mean + reach
        );
    }

    /// <summary>What is to be said of a mean of values with such moments.</summary>
    internal static ImmutableArray<EstimateNote> NotesOf(Moments moments) =>
        moments.IsConstant ? [EstimateNote.SameValues] : [];
}
