using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Drift;

/// <summary>
/// Drift by summary measures: one slope a specimen, then the mean of the slopes. The repeated measurements of a specimen share its errors,
/// so a fit over all pooled points would claim far more precision than there is.
/// </summary>
public static class SpecimenSlopes
{
    /// <summary>
    /// With pⱼ the percent change at the actual delay tⱼ and t₀ the actual baseline delay of that specimen, gⱼ = f(tⱼ) − f(t₀) and b = Σgp/Σg²: least squares through
    /// the specimen's own baseline. Mean slope with bounds that span those over specimens and over every clustering (<see cref="ClusteredMean"/>).
    /// Summary measures: Matthews, Altman, Campbell and Royston, BMJ 300 (1990) 230–235; from memory.
    /// Assumes independent specimens (or clusters), slopes near normal, and the declared shape. A specimen without any delay other than
    /// its baseline delay has no slope and is left out, with a note that counts them. Ties and zeros need no treatment. Smallest number of specimens: 2.
    /// </summary>
    /// <param name="series">One series a specimen; hours and percent.</param>
    /// <param name="clusterings">The ways in which specimens share an error, one cluster a series; may be empty.</param>
    /// <param name="shape">The declared shape.</param>
    /// <param name="oneSidedConfidence">Level of each one-sided bound, between 0.5 and 1, such as 0.95.</param>
    /// <returns>The drift; or too few values.</returns>
    /// <exception cref="ArgumentException">
    /// The series are absent, a specimen appears twice, a clustering has not as many clusters as there are series, the shape is unknown, or the level is not between 0.5 and 1.
    /// </exception>
    public static Estimate<DriftEstimate> Fit(
        ImmutableArray<SpecimenSeries> series,
        ImmutableArray<Clustering> clusterings,
        DriftShape shape,
        double oneSidedConfidence
    )
    {
        RequireArguments(series, clusterings, oneSidedConfidence);
        var kept = new List<(SpecimenSeries Series, double Slope, int Index)>();
        for (var i = 0; i < series.Length; i++)
        {
            if (Slope(series[i], shape) is { } slope)
            {
                kept.Add((series[i], slope, i));
            }
        }

        if (kept.Count < 2)
        {
            return Estimate.Refused<DriftEstimate>(Refusal.TooFewForDrift);
        }

        var mean = ClusteredMean.WithInterval(
            [.. kept.Select(item => item.Slope)],
            [
                .. clusterings.Select(item =>
                    item.With([.. kept.Select(slope => item.Cluster[slope.Index])])
                ),
            ],
            (2 * oneSidedConfidence) - 1
        );
        if (!mean.TryGet(out var meanSlope))
        {
            return mean.RefusedAs<DriftEstimate>();
        }

        var estimate = new DriftEstimate(
            shape,
            kept.Count,
            series.Length - kept.Count,
            [.. kept.Select(item => item.Series.Specimen)],
            [.. kept.Select(item => item.Slope)],
            meanSlope,
            oneSidedConfidence,
            kept.Average(item => item.Series.BaselineDelayHours)
        );
        return new Estimate<DriftEstimate>(
            estimate,
            null,
            kept.Count == series.Length
                ? mean.Notes
                : mean.Notes.Add(EstimateNote.NoDelayBeyondBaseline)
        );
    }

    /// <summary>f(t) of a shape: t, ln(1 + t/1 h) or t².</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="hours">Time since collection, in hours, not negative.</param>
    /// <exception cref="ArgumentException">The time is negative or not finite, or the shape is unknown.</exception>
    public static double Transform(DriftShape shape, double hours)
    {
        if (!(hours >= 0 && double.IsFinite(hours)))
        {
            throw new ArgumentException(
                "A time since collection is finite and not negative.",
                nameof(hours)
            );
        }

        return shape switch
        {
            DriftShape.Linear => hours,
            DriftShape.Logarithmic => double.LogP1(hours),
            DriftShape.Quadratic => hours * hours,
            _ => throw new ArgumentException("The shape is unknown.", nameof(shape)),
        };
    }

    private static double? Slope(SpecimenSeries series, DriftShape shape)
    {
        var baseline = Transform(shape, series.BaselineDelayHours);
        var growth = series.DelayHours.Select(t => Transform(shape, t) - baseline).ToArray();
        return OrdinaryLeastSquares.SlopeThroughOrigin(growth, series.ChangePercent.AsSpan());
    }

    private static void RequireArguments(
        ImmutableArray<SpecimenSeries> series,
        ImmutableArray<Clustering> clusterings,
        double oneSidedConfidence
    )
    {
        if (series.IsDefault)
        {
            throw new ArgumentException("There are no series at all.", nameof(series));
        }

        if (series.DistinctBy(item => item.Specimen).Count() != series.Length)
        {
            throw new ArgumentException("A specimen appears twice.", nameof(series));
        }

        if (clusterings.Any(item => item.Cluster.Length != series.Length))
        {
            throw new ArgumentException("Each series needs one cluster.", nameof(clusterings));
        }

        Require.OneSidedConfidence(oneSidedConfidence, nameof(oneSidedConfidence));
    }
}
