using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Agreement;

/// <summary>
/// Limits of agreement: mean ± 1.96·s of paired differences, between which about 95 % of differences lie, with exact and
/// approximate intervals of each limit. Numbers are in the unit of the differences.
/// </summary>
/// <param name="Count">Number of differences n.</param>
/// <param name="Mean">Mean difference.</param>
/// <param name="StandardDeviation">Standard deviation s of the differences, divisor n − 1.</param>
/// <param name="Lower">mean − 1.96·s.</param>
/// <param name="Upper">mean + 1.96·s.</param>
/// <param name="LowerExact">Exact interval of the lower limit.</param>
/// <param name="UpperExact">Exact interval of the upper limit.</param>
/// <param name="LowerApproximate">Approximate interval of the lower limit.</param>
/// <param name="UpperApproximate">Approximate interval of the upper limit.</param>
/// <param name="ConfidenceLevel">Two-sided level of the four intervals.</param>
/// <remarks>
/// Sources: limits, Bland and Altman (1986), The Lancet 1:307–310, with the factor 1.96 that Bland and Altman (1999),
/// Statistical Methods in Medical Research 8:135–160, use for the 2 of the first paper; approximate intervals limit ± t(n − 1)·s·√(1/n + 1.96²/(2(n − 1))),
/// section 2.1 of the latter; exact intervals mean + t′(q; n − 1, 1.96·√n)·s/√n with q = (1 ∓ level)/2 and t′ the noncentral t quantile for the upper limit,
/// mirrored for the lower one: Carkeet (2015), Optometry and Vision Science 92:e71–e80 (papers cited from memory).
/// Assumptions: independent, normally distributed differences whose spread does not change with the level.
/// </remarks>
public sealed record LimitsOfAgreement(
    int Count,
    double Mean,
    double StandardDeviation,
    double Lower,
    double Upper,
    IntervalBounds LowerExact,
    IntervalBounds UpperExact,
    IntervalBounds LowerApproximate,
    IntervalBounds UpperApproximate,
    double ConfidenceLevel
)
{
    /// <summary>The published factor, not the normal quantile 1.959964 that it rounds.</summary>
    private const double Factor = 1.96;

    /// <summary>Computes the limits and their intervals.</summary>
    /// <param name="differences">Paired differences in one unit, in any order; not written to. Ties and zeros are ordinary values.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// Fewer than two differences: <see cref="AssumptionCode.TooFewValues"/>. All the same: limits without width and the
    /// note <see cref="AssumptionCode.ZeroSpread"/>.
    /// </returns>
    /// <exception cref="ArgumentException">A difference is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<LimitsOfAgreement> Compute(
        ReadOnlySpan<double> differences,
        double confidenceLevel
    )
    {
        Require.Numbers(differences, nameof(differences));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (differences.Length < 2)
        {
            return Estimate.Refused<LimitsOfAgreement>(Refusal.TooFewForLimitsOfAgreement);
        }

        var moments = Moments.Of(differences);
        var (mean, deviation) = (moments.Mean, moments.StandardDeviation);
        double n = moments.Count;
        var lower = mean - (Factor * deviation);
        var upper = mean + (Factor * deviation);

        var outerTail = (1 + confidenceLevel) / 2;
        var standardError = deviation / Math.Sqrt(n);
        var inner = standardError * Reach(1 - outerTail);
        var outer = standardError * Reach(outerTail);
        var approximate =
            StudentT.Quantile(outerTail, n - 1)
            * deviation
            * Math.Sqrt((1 / n) + (Factor * Factor / (2 * (n - 1))));

        var limits = new LimitsOfAgreement(
            moments.Count,
            mean,
            deviation,
            lower,
            upper,
            new IntervalBounds(mean - outer, mean - inner),
            new IntervalBounds(mean + inner, mean + outer),
            new IntervalBounds(lower - approximate, lower + approximate),
            new IntervalBounds(upper - approximate, upper + approximate),
            confidenceLevel
        );
        return moments.IsConstant
            ? Estimate.Of(limits, EstimateNote.SameValues)
            : Estimate.Of(limits);

        double Reach(double probability) =>
            NoncentralT.Quantile(probability, n - 1, Factor * Math.Sqrt(n));
    }
}
