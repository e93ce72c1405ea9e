using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>Which share of its allowance the change of each measured pair uses: ±1 are the limits.</summary>
/// <param name="Measured">The pairs of the reading that were measured both times, but for those with a baseline of which a percentage means nothing.</param>
/// <param name="Shares">Their shares.</param>
/// <param name="Verdicts">Whether the results are within the limit.</param>
/// <param name="IsExact">Whether the shares are those of the results, so that the results themselves are compared with the limit.</param>
/// <param name="Shift">By how much the runs could by chance have moved every share.</param>
internal sealed record AllowanceUse(
    ImmutableArray<PairRecord> Measured,
    ImmutableArray<double> Shares,
    ImmutableArray<AllowanceVerdict> Verdicts,
    bool IsExact,
    double Shift
)
{
    /// <summary>The share at a place among the measured pairs, and whether it is outside; null where another pair stands there.</summary>
    public (double Share, bool IsOutside)? ShareAt(int place, PairRecord pair) =>
        place < Measured.Length && ReferenceEquals(Measured[place], pair)
            ? (Shares[place], Verdicts[place] == AllowanceVerdict.Outside)
            : null;

    /// <summary>The shares of a reading; <see cref="PairReading.UseOf"/> remembers them.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="allowance">The allowance.</param>
    /// <param name="context">The imprecision of one result.</param>
    /// <param name="confidenceLevel">One-sided level of the shift; null for none.</param>
    public static AllowanceUse Of(
        PairReading reading,
        Allowance allowance,
        CellContext context,
        double? confidenceLevel
    )
    {
        var pairs = MeasuredOf(reading, allowance);
        var exact = reading.Data.ExactOf(pairs);
        var shares = AllowableDifference.Shares(exact, allowance);
        var settled = reading.FromBaseline is { } fromBaseline
            ? Settled(
                pairs,
                shares,
                fromBaseline.UseOf(allowance, context, confidenceLevel),
                allowance,
                context
            )
            : shares;
        return new(
            pairs,
            settled,
            AllowableDifference.Judge(exact, allowance),
            settled == shares,
            confidenceLevel is { } level
                ? SharedShift.Of(settled, reading.Data.ErrorsOf(pairs).Clusterings, level)
                : 0
        );
    }

    private static ImmutableArray<PairRecord> MeasuredOf(
        PairReading reading,
        Allowance allowance
    ) =>
        reading.Pairs.Keep(pair =>
            pair.IsOfNumbers && (allowance.Absolute is not null || pair.Values().Baseline > 0)
        );

    /// <summary>
    /// Counted from collection, a change is lengthened, and what imprecision adds to it is lengthened too, although there is no more of it. So the lengthened shares
    /// c are drawn toward their mean m₀: m₀ + (c − m₀)·min(1, √(k²·max(0, s² − v) + v)/s₀), with s the SD from the baseline, s₀ that of c, k the mean lengthening and v the variance of one result's imprecision.
    /// </summary>
    private static ImmutableArray<double> Settled(
        ImmutableArray<PairRecord> pairs,
        ImmutableArray<double> lengthened,
        AllowanceUse fromBaseline,
        Allowance allowance,
        CellContext context
    )
    {
        if (
            !Spread.Summarize(lengthened.AsSpan()).TryGet(out var spread)
            || !Spread.Summarize(fromBaseline.Shares.AsSpan()).TryGet(out var ofBaseline)
        )
        {
            return lengthened;
        }

        var k = pairs.Average(ValueAtCollection.Stretch);
        var noise = fromBaseline.Measured.Average(pair => NoiseVariance(pair, allowance, context));
        var own = Math.Max(0, Math.Pow(ofBaseline.StandardDeviation, 2) - noise);
        var factor = Math.Sqrt((k * k * own) + noise) / spread.StandardDeviation;
        return factor >= 1
            ? lengthened
            : [.. lengthened.Select(share => spread.Mean + ((share - spread.Mean) * factor))];
    }

    /// <summary>(CV·x)²/A(x)² of one reported result; 0 without a stated CV.</summary>
    private static double NoiseVariance(PairRecord pair, Allowance allowance, CellContext context)
    {
        var baseline = (double)pair.Values().Baseline;
        var sd = (double)(context.Analyte.BetweenRunCvPercent ?? 0) * baseline / 100;
        var share = sd / allowance.At(baseline);
        return share * share / context.Protocol.Replicates;
    }
}
