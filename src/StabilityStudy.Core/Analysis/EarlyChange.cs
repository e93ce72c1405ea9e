using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the declared shape of drift puts between collection and baseline, which no pair shows, and where it would take the interval of a supported mean to the limit or past it.</summary>
/// <param name="BaselineMinutes">Mean time from collection to baseline.</param>
/// <param name="Percent">The change before the baseline, percent.</param>
/// <param name="LimitPercent">The allowable bias, percent.</param>
/// <param name="Reached">The supported time points at which the interval would reach the limit, and how far it would reach.</param>
public sealed record EarlyChange(
    double BaselineMinutes,
    double Percent,
    double LimitPercent,
    ImmutableArray<(TimePoint TimePoint, double Percent)> Reached
)
{
    /// <summary>The early change of a sequence; null where there is no curve or no limit in percent.</summary>
    public static EarlyChange? Of(Sequence sequence)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        if (
            sequence.Drift is not { LimitPercent: { } limit, Estimate: var estimate }
            || !estimate.TryGet(out var drift)
        )
        {
            return null;
        }

        var before = DriftPrediction.FromCollectionToBaseline(drift).Change;
        return new(
            60 * drift.BaselineDelayHours,
            before,
            limit,
            [
                .. from cell in sequence.Cells
                where cell.Conclusion == Conclusion.Supported
                let mean = cell.DecidingMeanPercent ?? cell.Estimates.MeanPercent.Value
                where mean is not null
                let end = before < 0 ? mean.Lower : mean.Upper
                where Math.Abs(end + before) >= limit
                select (cell.Key.TimePoint, end + before),
            ]
        );
    }
}
