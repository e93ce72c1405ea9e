namespace StabilityStudy.Statistics.Drift;

/// <summary>Finds when a drift, with its uncertainty, leaves the allowable change.</summary>
public static class Crossing
{
    /// <summary>
    /// The first t from the mean actual baseline delay t₀ on at which the one-sided lower bound reaches −limit or the one-sided upper bound reaches +limit. The bounds are
    /// U·(f(t) − f(t₀)) and L·(f(t) − f(t₀)) with L and U the bounds of the mean slope, and f only rises, so the crossing is f⁻¹(f(t₀) + limit/max(U, −L)) in closed form.
    /// The time is counted from collection; <see cref="DriftPrediction.FromCollectionToBaseline"/> states the drift that the shape implies before the baseline.
    /// A limit of zero is reached at the baseline. A crossing beyond the largest double is no crossing.
    /// </summary>
    /// <param name="estimate">The drift; its assumptions are those of <see cref="SpecimenSlopes.Fit"/>.</param>
    /// <param name="limitPercent">Allowable change in percent of the baseline, either way; not negative.</param>
    /// <exception cref="ArgumentNullException">There is no estimate.</exception>
    /// <exception cref="ArgumentException">The limit is negative or not finite.</exception>
    public static CrossingTime Find(DriftEstimate estimate, double limitPercent)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        if (!(limitPercent >= 0 && double.IsFinite(limitPercent)))
        {
            throw new ArgumentException(
                "An allowable change is finite and not negative.",
                nameof(limitPercent)
            );
        }

        if (limitPercent == 0)
        {
            return new CrossingTime.AlreadyOutside();
        }

        var steepest = Math.Max(estimate.MeanSlope.Upper, -estimate.MeanSlope.Lower);
        if (steepest <= 0)
        {
            return new CrossingTime.Never();
        }

        var hours = Inverse(
            estimate.Shape,
            SpecimenSlopes.Transform(estimate.Shape, estimate.BaselineDelayHours)
                + (limitPercent / steepest)
        );
        return double.IsFinite(hours) ? new CrossingTime.At(hours) : new CrossingTime.Never();
    }

    private static double Inverse(DriftShape shape, double transformed) =>
        shape switch
        {
            DriftShape.Linear => transformed,
            DriftShape.Logarithmic => double.ExpM1(transformed),
            DriftShape.Quadratic => Math.Sqrt(transformed),
            _ => throw new ArgumentException("The shape is unknown.", nameof(shape)),
        };
}
