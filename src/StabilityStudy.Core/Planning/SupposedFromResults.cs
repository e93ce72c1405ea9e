using System.Runtime.InteropServices;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Planning;

/// <summary>Results that would arise like those of a time point, save for the mean change.</summary>
internal static class SupposedFromResults
{
    /// <summary>A spread that no sound method has between two results of a specimen.</summary>
    public const double WidestSdPercent = 50;

    /// <summary>
    /// Days, runs and baselines as found. What a collection day adds to all its changes comes from the analysis of variance between days, half of its variance from either run; in one run days add
    /// nothing. The rest of the spread, less what rounding adds, is the imprecision of both results within their runs, as far as it can be, and the specimens' own.
    /// </summary>
    /// <returns>Refused without percent changes, with fewer than three, or without spread.</returns>
    public static Estimate<SupposedSpread> Of(ImmutableArray<PairRecord> pairs, CellContext context)
    {
        var data = context.DataOf(pairs);
        return data.Compared.Length > LargestSample.Simulation
            ? Estimate.Refused<SupposedSpread>(Refusal.TooManyToSimulate)
            : RelativeChange.Percent(data.Pairs).Then(changes => Of(data, changes, context));
    }

    private static Estimate<SupposedSpread> Of(
        CellData data,
        ImmutableArray<double> changes,
        CellContext context
    )
    {
        var summary = Spread.Summarize(changes.AsSpan());
        return summary.TryGet(out var spread)
            ? Of(data, Parts(data, changes, spread), spread.Mean, context) is var supposed
            && IsDrawable(supposed.Found)
            && IsDrawable(supposed.AtBound)
                ? Estimate.Of(supposed)
                : Estimate.Refused<SupposedSpread>(Refusal.SpreadTooWide)
            : summary.RefusedAs<SupposedSpread>();
    }

    /// <summary>A wider spread would draw results near zero, or comes of a change before the baseline that nothing measured.</summary>
    private static bool IsDrawable(SupposedResults supposed) =>
        supposed.SpecimenSdPercent < WidestSdPercent && supposed.RunSdPercent < WidestSdPercent;

    private static SupposedSpread Of(
        CellData data,
        (Variances Found, Variances Bound) parts,
        double meanPercent,
        CellContext context
    )
    {
        // What a repeat or a run adds to one result comes twice into the quotient y/x, in proportion to it.
        var quotient = 1 + (meanPercent / 100);
        var noise = 2 * quotient * quotient;

        // A share b of the change c since collection comes before the baseline: y/x = (1 + c)/(1 + b·c), solved for c and differentiated.
        var before = CriterionSetCharacteristic.ShareBeforeBaseline(context);
        var sinceOrigin = (1 - before) / Math.Pow(1 - (before * quotient), 2);
        var rounding = RoundingVariance(data);
        var cv = (double)(context.Analyte.BetweenRunCvPercent ?? 0);
        double Run(Variances part) => part.OfDays / noise;
        double Within(Variances part) => Math.Max(0, part.OfSpecimens - rounding);

        // The stated CV holds what runs add too; what the study shows of that is taken out.
        var repeat = Math.Min(
            Math.Max(0, (cv * cv) - Run(parts.Found)) / context.Protocol.Replicates,
            Within(parts.Found) / noise
        );
        double Specimens(Variances part) =>
            sinceOrigin * Math.Sqrt(Math.Max(0, Within(part) - (noise * repeat)));
        var found = new SupposedResults(
            SupposedConduct.Of(data.Errors),
            data.SameRun,
            Median(data.Pairs.X),
            Math.Sqrt(
                Math.Max(0, LogVariance(data.Pairs.X) - ((repeat + Run(parts.Found)) / 10_000))
            ),
            Specimens(parts.Found),
            Math.Sqrt(repeat),
            Math.Sqrt(Run(parts.Found))
        );
        return new(
            found,
            found with
            {
                SpecimenSdPercent = Specimens(parts.Bound),
                RunSdPercent = Math.Sqrt(Run(parts.Bound)),
            }
        );
    }

    /// <summary>What the changes of a day share and what each has for itself: as found, and at the upper bounds.</summary>
    private static (Variances Found, Variances Bound) Parts(
        CellData data,
        ImmutableArray<double> changes,
        SpreadSummary spread
    )
    {
        const double level = SupposedSpread.ConfidenceLevel;
        var all = new Variances(spread.StandardDeviation * spread.StandardDeviation, 0);
        return
            !data.SameRun
            && ClusterVariation.Compute(changes.AsSpan(), data.Errors.Days).TryGet(out var days)
            && VarianceBound
                .OfClusters(changes.AsSpan(), data.Errors.Days, level)
                .TryGet(out var bounds)
            ? (
                days.SharedStandardDeviation > 0
                    ? new(days.MeanSquareWithin, Math.Pow(days.SharedStandardDeviation, 2))
                    : all,
                new(bounds.Within, bounds.Shared)
            )
            : (all, new(VarianceBound.Upper(all.OfSpecimens, spread.Count - 1, level), 0));
    }

    private static double Median(ImmutableArray<double> values)
    {
        double[] ascending = [.. values.Order()];
        return (ascending[(ascending.Length - 1) / 2] + ascending[ascending.Length / 2]) / 2;
    }

    private static double LogVariance(ImmutableArray<double> values) =>
        Spread.Summarize([.. values.Select(Math.Log)]).TryGet(out var logs)
            ? logs.StandardDeviation * logs.StandardDeviation
            : 0;

    /// <summary>What the rounding of both results adds to the variance of a percent change: 10⁴·increment²/6·mean(1/x²), to first order; simulated results are rounded again.</summary>
    private static double RoundingVariance(CellData data) =>
        10_000
        * data.ReportingIncrement
        * data.ReportingIncrement
        / 6
        * data.Pairs.X.Average(x => 1 / (x * x));

    /// <summary>Parts of the variance of a percent change.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Variances(double OfSpecimens, double OfDays);
}

/// <summary>How results arise, with the spread as found and with the largest that it may be.</summary>
/// <param name="Found">With the estimated standard deviations.</param>
/// <param name="AtBound">With their upper bounds.</param>
public sealed record SupposedSpread(SupposedResults Found, SupposedResults AtBound)
{
    /// <summary>One-sided level of each upper bound.</summary>
    public const double ConfidenceLevel = 0.95;
}
