namespace StabilityStudy.Statistics.Drift;

/// <summary>The change that a drift estimate predicts at one time.</summary>
/// <param name="Hours">Time since collection, in hours.</param>
/// <param name="Change">Predicted mean change, in percent of the baseline.</param>
/// <param name="LowerBound">One-sided lower bound, in percent of the baseline.</param>
/// <param name="UpperBound">One-sided upper bound, in percent of the baseline.</param>
public sealed record DriftPoint(double Hours, double Change, double LowerBound, double UpperBound);

/// <summary>Reads mean changes off a drift estimate.</summary>
public static class DriftPrediction
{
    /// <summary>
    /// The mean change slope·(f(t) − f(t₀)) from the mean actual baseline delay t₀ to the time t, with one-sided bounds from the bounds of the slope. Before t₀ the
    /// change is the one to come with reversed sign. Its assumptions are those of <see cref="SpecimenSlopes.Fit"/>.
    /// </summary>
    /// <param name="estimate">The drift.</param>
    /// <param name="hours">Time since collection, in hours, not negative.</param>
    /// <exception cref="ArgumentNullException">There is no estimate.</exception>
    /// <exception cref="ArgumentException">The time is negative or not finite.</exception>
    public static DriftPoint At(DriftEstimate estimate, double hours)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        var growth =
            SpecimenSlopes.Transform(estimate.Shape, hours)
            - SpecimenSlopes.Transform(estimate.Shape, estimate.BaselineDelayHours);
        return Point(estimate, hours, growth);
    }

    /// <summary>
    /// The mean change slope·(f(t₀) − f(0)) that the shape implies between collection and the baseline. Nobody measured it: it is an extrapolation,
    /// to be stated beside every time that is counted from collection.
    /// </summary>
    /// <param name="estimate">The drift.</param>
    /// <returns>The change at the mean actual baseline delay, relative to collection.</returns>
    /// <exception cref="ArgumentNullException">There is no estimate.</exception>
    public static DriftPoint FromCollectionToBaseline(DriftEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        var growth =
            SpecimenSlopes.Transform(estimate.Shape, estimate.BaselineDelayHours)
            - SpecimenSlopes.Transform(estimate.Shape, 0);
        return Point(estimate, estimate.BaselineDelayHours, growth);
    }

    private static DriftPoint Point(DriftEstimate estimate, double hours, double growth)
    {
        var atLower = estimate.MeanSlope.Lower * growth;
        var atUpper = estimate.MeanSlope.Upper * growth;
        return new DriftPoint(
            hours,
            estimate.MeanSlope.Mean * growth,
            Math.Min(atLower, atUpper),
            Math.Max(atLower, atUpper)
        );
    }
}
