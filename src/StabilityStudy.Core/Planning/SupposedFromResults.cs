using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Planning;

/// <summary>Results that would arise like those of a time point, save for the mean change.</summary>
internal static class SupposedFromResults
{
    /// <summary>
    /// Number, days and baselines as found. What a collection day adds to all its changes comes from the analysis of variance between days, half of its variance from either run; the rest of the
    /// spread, less what rounding adds, belongs to specimens. In one run days add nothing.
    /// </summary>
    /// <returns>Refused without percent changes, with fewer than three, or without spread.</returns>
    public static Estimate<SupposedResults> Of(CellData data) =>
        data.Compared.Length > LargestSample.Simulation
            ? Estimate.Refused<SupposedResults>(Refusal.TooManyToSimulate)
            : RelativeChange.Percent(data.Pairs).Then(changes => Of(data, changes));

    private static Estimate<SupposedResults> Of(CellData data, ImmutableArray<double> changes)
    {
        var spread = Spread.Summarize(changes.AsSpan());
        return spread.TryGet(out var found)
            ? Estimate.Of(Of(data, changes, found.StandardDeviation))
            : spread.RefusedAs<SupposedResults>();
    }

    private static SupposedResults Of(
        CellData data,
        ImmutableArray<double> changes,
        double standardDeviation
    )
    {
        double[] logs = [.. data.Pairs.X.Select(Math.Log)];
        double[] ascending = [.. data.Pairs.X.Order()];
        var (ofSpecimens, ofDays) =
            !data.SameRun
            && ClusterVariation
                .Compute(changes.AsSpan(), data.Errors.Clusterings[0])
                .TryGet(out var days)
            && days.SharedStandardDeviation > 0
                ? (Math.Sqrt(days.MeanSquareWithin), days.SharedStandardDeviation)
                : (standardDeviation, 0);

        // The simulated results are rounded again, so what rounding adds to the spread found is taken out of it.
        var withoutRounding = (ofSpecimens * ofSpecimens) - RoundingVariance(data);
        return new SupposedResults(
            data.Compared.Length,
            data.Errors.Counts.Days,
            data.SameRun,
            (ascending[(ascending.Length - 1) / 2] + ascending[ascending.Length / 2]) / 2,
            Spread.Summarize(logs).TryGet(out var baselines) ? baselines.StandardDeviation : 0,
            Math.Sqrt(Math.Max(0, withoutRounding)),
            ofDays / Math.Sqrt(2)
        );
    }

    /// <summary>What the rounding of both results adds to the variance of a percent change: 10⁴·increment²/6·mean(1/x²), to first order.</summary>
    private static double RoundingVariance(CellData data) =>
        10_000
        * data.ReportingIncrement
        * data.ReportingIncrement
        / 6
        * data.Pairs.X.Average(x => 1 / (x * x));
}
