using System.Runtime.InteropServices;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Drift;

/// <summary>The drift of a sequence by a mixed model in one shape: description, beside the mean of specimen slopes.</summary>
/// <param name="Shape">How the change is taken to grow with time.</param>
/// <param name="IsDeclared">Whether this is the shape of the protocol.</param>
/// <param name="Fit">The fit to 100·ln(result), so that a slope is percent for each unit of f(t), to first order.</param>
/// <param name="Crossing">When its bounds reach the allowable bias on either side; null without a limit in percent or without a fit.</param>
public sealed record MixedDrift(
    DriftShape Shape,
    bool IsDeclared,
    Estimate<RandomSlopeFit> Fit,
    CrossingRoots? Crossing
)
{
    /// <summary>The largest limit whose lower end has a logarithm.</summary>
    private const double MostPercent = 100;

    /// <summary>Every shape, so that a reader sees which the results follow best; none without two compared results.</summary>
    internal static ImmutableArray<MixedDrift> InEveryShape(
        SpecimenPairs compared,
        DriftShape declared,
        double oneSidedConfidence,
        double? limitPercent
    )
    {
        if (compared.All.IsEmpty)
        {
            return [];
        }

        var measured = compared.Where(pairs => pairs.All(IsAboveZero));
        var specimens = measured.All.Map(Timed.Of);
        var baselineHours = specimens
            .Select(specimen => specimen.Hours[0])
            .DefaultIfEmpty()
            .Average();
        return [.. Enum.GetValues<DriftShape>().Select(In)];

        MixedDrift In(DriftShape shape)
        {
            var fit = RandomSlope.Fit(
                specimens.Map(specimen => specimen.In(shape)),
                oneSidedConfidence,
                measured.Clusterings
            );
            return new MixedDrift(
                shape,
                shape == declared,
                fit,
                fit.TryGet(out var slope) && limitPercent is > 0 and < MostPercent and var limit
                    ? Statistics.Drift.Crossing.Roots(
                        shape,
                        baselineHours,
                        slope.SlopeLower,
                        slope.SlopeUpper,
                        100 * double.LogP1(-limit / 100),
                        100 * double.LogP1(limit / 100)
                    )
                    : null
            );
        }
    }

    private static bool IsAboveZero(TimedPair pair) =>
        pair.Pair.Values() is { Baseline: > 0, Delayed: > 0 };

    /// <summary>The results of one specimen, as logarithms, with their delays.</summary>
    private sealed record Timed(ImmutableArray<double> Hours, ImmutableArray<double> Logarithms)
    {
        public static Timed Of(ImmutableArray<TimedPair> pairs)
        {
            var hours = new double[pairs.Length + 1];
            var logarithms = new double[pairs.Length + 1];
            hours[0] = pairs[0].BaselineHours;
            logarithms[0] = Logarithm(pairs[0].Pair.Values().Baseline);
            for (var i = 0; i < pairs.Length; i++)
            {
                hours[i + 1] = pairs[i].DelayedHours;
                logarithms[i + 1] = Logarithm(pairs[i].Pair.Values().Delayed);
            }

            return new(
                ImmutableCollectionsMarshal.AsImmutableArray(hours),
                ImmutableCollectionsMarshal.AsImmutableArray(logarithms)
            );
        }

        private static double Logarithm(decimal value) => 100 * Math.Log((double)value);

        public SpecimenResponses In(DriftShape shape) =>
            new(Hours.Map(hours => SpecimenSlopes.Transform(shape, hours)), Logarithms);
    }
}
