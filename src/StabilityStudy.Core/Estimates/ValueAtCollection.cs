using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Estimates;

/// <summary>
/// What a specimen's result would have been at collection: x₀ = x − (y − x)·f(t₀)/(f(t) − f(t₀)), with its own baseline
/// delay t₀ and delay t, and f(t) = ln(1 + t/1 h). Of the courses that the program knows this puts most of a change before the baseline, so what
/// holds under it holds under all of them; a course that falls off faster still is an assumption that the claim names.
/// </summary>
internal static class ValueAtCollection
{
    /// <summary>A reading with every baseline replaced by the value at collection.</summary>
    /// <param name="fromBaseline">The reading.</param>
    /// <param name="context">What it is read against.</param>
    /// <param name="known">Readings of the same specimens: a pair that is the same in one of them need not be computed again.</param>
    public static PairReading Reading(
        PairReading fromBaseline,
        CellContext context,
        ImmutableArray<PairReading> known
    )
    {
        var kind =
            fromBaseline.Kind == ChangeReading.RunsBridged
                ? ChangeReading.RunsBridgedSinceCollection
                : ChangeReading.SinceCollection;
        var same = known.FirstOrDefault(reading => reading.Kind == kind);
        var without = ImmutableArray.CreateBuilder<string>();
        var builder = ImmutableArray.CreateBuilder<PairRecord>(fromBaseline.Pairs.Length);
        foreach (var pair in fromBaseline.Pairs)
        {
            if (same?.ValueOfSame(pair, builder.Count) is { } computed)
            {
                builder.Add(computed);
            }
            else if (!pair.IsOfNumbers || Factor(pair) is not { } factor)
            {
                builder.Add(pair);
            }
            else if (Of(pair, factor) is { } value)
            {
                builder.Add(pair.WithBaseline(value));
            }
            else
            {
                without.Add(pair.Specimen);
                builder.Add(pair);
            }
        }

        var pairs = builder.MoveToImmutable();
        return new(
            kind,
            pairs,
            without.Count == 0
                ? same?.Data.IfOf(pairs) ?? fromBaseline.Data.WithValuesOf(pairs)
                : context.DataOf(pairs.Keep(pair => !without.Contains(pair.Specimen)))
        )
        {
            FromBaseline = fromBaseline,
            WithoutValueAtCollection = without.ToImmutable(),
            WithoutBridging = fromBaseline.WithoutBridging,
            Persons = fromBaseline.Persons,
        };
    }

    /// <summary>By how many times the change since collection is that since the baseline: f(t)/(f(t) − f(t₀)).</summary>
    public static double Stretch(PairRecord pair) => 1 + (Factor(pair) ?? 0);

    /// <summary>f(t₀)/(f(t) − f(t₀)); null without both delays. A delayed test comes after its baseline.</summary>
    private static double? Factor(PairRecord pair)
    {
        if (pair is not { Baseline.Delay: { } early, Delayed.Delay: { } late })
        {
            return null;
        }

        var before = SpecimenSlopes.Transform(DriftShape.Logarithmic, early.TotalHours);
        return before
            / (SpecimenSlopes.Transform(DriftShape.Logarithmic, late.TotalHours) - before);
    }

    private static decimal? Of(PairRecord pair, double factor)
    {
        var (x, y) = pair.Values();
        var value = (double)x - ((double)(y - x) * factor);
        return value > 0 && value < (double)ExactPairs.Largest
            ? Math.Max(decimal.Round((decimal)value, ExactPairs.MostDecimals), 1e-9m)
            : null;
    }
}
