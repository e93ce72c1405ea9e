namespace StabilityStudy.Statistics.Drift;

/// <summary>Finds when a drift, with its uncertainty, leaves the allowable change.</summary>
public static class Crossing
{
    /// <summary>
    /// The first t from the mean actual baseline delay t₀ on at which the one-sided lower bound reaches −limit or the one-sided upper bound reaches +limit. The bounds are
    /// U·(f(t) − f(t₀)) and L·(f(t) − f(t₀)) with L and U the bounds of the mean slope, and f only rises, so the crossing is f⁻¹(f(t₀) + limit/max(U, −L)) in closed form: the earlier of <see cref="Roots"/>.
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

        var roots = Roots(
            estimate.Shape,
            estimate.BaselineDelayHours,
            estimate.MeanSlope.Lower,
            estimate.MeanSlope.Upper,
            -limitPercent,
            limitPercent
        );
        return roots.First is { } hours ? new CrossingTime.At(hours) : new CrossingTime.Never();
    }

    /// <summary>
    /// When the lower bound L·(f(t) − f(t₀)) reaches the lower limit and the upper bound U·(f(t) − f(t₀)) the upper one, after t₀: f⁻¹(f(t₀) + limit/bound) where the bound of the slope has the sign of its
    /// limit, else never. Each shape has one parameter and only rises, so either bound has one root at most; of the two roots of t² the negative one is no time.
    /// </summary>
    /// <param name="shape">f.</param>
    /// <param name="baselineDelayHours">t₀, in hours since collection, not negative.</param>
    /// <param name="slopeLower">One-sided lower bound L of the slope, in the unit of the limits for each unit of f(t).</param>
    /// <param name="slopeUpper">One-sided upper bound U of the slope.</param>
    /// <param name="lowerLimit">The lower limit, below zero.</param>
    /// <param name="upperLimit">The upper limit, above zero.</param>
    /// <exception cref="ArgumentException">A number is not finite, the limits do not enclose zero, the time is negative, or the shape is unknown.</exception>
    public static CrossingRoots Roots(
        DriftShape shape,
        double baselineDelayHours,
        double slopeLower,
        double slopeUpper,
        double lowerLimit,
        double upperLimit
    )
    {
        Require.Number(slopeLower, nameof(slopeLower));
        Require.Number(slopeUpper, nameof(slopeUpper));
        Require.Number(lowerLimit, nameof(lowerLimit));
        Require.Number(upperLimit, nameof(upperLimit));
        if (!(lowerLimit < 0 && upperLimit > 0))
        {
            throw new ArgumentException("The limits enclose zero.", nameof(upperLimit));
        }

        var start = SpecimenSlopes.Transform(shape, baselineDelayHours);
        return new CrossingRoots(Root(slopeLower, lowerLimit), Root(slopeUpper, upperLimit));

        double? Root(double slope, double limit)
        {
            if (!(limit / slope > 0))
            {
                return null;
            }

            var hours = Inverse(shape, start + (limit / slope));
            return double.IsFinite(hours) ? hours : null;
        }
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
