using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// The true share of specimens that change the side of a level, or their class, is the allowed one. Baselines are
/// spread evenly over 10 s on either side of 40 s, so that the share that crosses is E|d|/20 for a change d.
/// </summary>
internal static class SideScenarios
{
    private const double Level = 40;
    private const double Reach = 10;
    private const double ChangeSd = 1;

    private static readonly ImmutableArray<LimitChoice> s_counted = [new("aPTT", null)];

    private static readonly SimulatedStudy s_sides = SimulatedStudy.Of(
        [],
        new ReclassificationCriterion("sides", s_counted, [], 0.95, 10, [40])
        {
            // Every change of side is clear, so that the true share is known.
            ZoneInUnit = 0.00001m,
        }
    );

    private static readonly SimulatedStudy s_inr = SimulatedStudy
        .Of([], new ReclassificationCriterion("sides", s_counted, [], 0.95, 15, [2, 3]))
        .Analyte(analyte =>
            analyte with
            {
                BetweenRunCvPercent = 2m,
                Unit = "{INR}",
                MeasuringInterval = null,
            }
        );

    private static readonly SimulatedStudy s_classes = SimulatedStudy.Of(
        [],
        new ClassificationCriterion("classes", s_counted, [], 0.95, 85, [40, 60], 2)
    );

    public static IEnumerable<Scenario> All =>
        [
            .. MeanScenarios.Sizes.SelectMany(n =>
                new[] { 0.0, 0.5, 1.0 }.SelectMany(runSd =>
                    new[] { Reclassified(n, runSd), Classified(n, runSd) }
                )
            ),
            .. from percent in new[] { 0.0, 3, 14 }
            from n in new[] { 40, 80 }
            select Inr(percent, n),
        ];

    /// <summary>At most 10 % may change side, and 10 % do.</summary>
    public static Scenario Reclassified(int specimens, double runSd) =>
        Of(
            "Reclassification: 10 % change the side of a decision level, at most 10 % allowed",
            s_sides,
            specimens,
            runSd,
            0.10
        );

    /// <summary>INR of median 2.5 reported to 0.1, CV 2 %, at most 15 % clearly across 2.0 or 3.0 by the usual zone of 0.2.</summary>
    public static Scenario Inr(double changePercent, int specimens) =>
        new(
            "Reclassification: INR with the usual zone of 0.2, at most 15 % clearly across 2.0 and 3.0",
            FormattableString.Invariant($"true change of {changePercent} %; 10 days"),
            specimens,
            Reading.Power,
            random =>
            {
                var collection = Collection.On(10, specimens);
                return s_inr.Supports([
                    .. Enumerable
                        .Range(0, specimens)
                        .Select(i =>
                        {
                            var level = 2.5 * Math.Exp(0.35 * random.NextNormal());
                            return SimulatedPairs.Compared(
                                i,
                                level * (1 + (2 * random.NextNormal() / 100)),
                                level
                                    * (1 + (changePercent / 100))
                                    * (1 + (2 * random.NextNormal() / 100)),
                                collection,
                                decimals: 1
                            );
                        }),
                ]);
            }
        );

    /// <summary>At least 85 % must keep their class, and 85 % do.</summary>
    public static Scenario Classified(int specimens, double runSd) =>
        Of(
            "Classification: 85 % keep their class, at least 85 % required",
            s_classes,
            specimens,
            runSd,
            0.15
        );

    private static Scenario Of(
        string section,
        SimulatedStudy study,
        int specimens,
        double runSd,
        double share
    )
    {
        var collection = Collection.On(5, specimens);
        var mean = MeanChange(
            2 * Reach * share,
            Math.Sqrt((ChangeSd * ChangeSd) + (2 * runSd * runSd))
        );
        return new(
            section,
            runSd == 0
                ? "specimens independent of each other"
                : FormattableString.Invariant(
                    $"shared runs of SD {runSd:0.0} s, change SD 1 s; 5 days"
                ),
            specimens,
            Reading.Controlled,
            random => study.Supports(Draw(random, collection, mean, runSd))
        );
    }

    private static ImmutableArray<PairRecord> Draw(
        SeededRandom random,
        Collection collection,
        double mean,
        double runSd
    )
    {
        var first = collection.Shifts(random, runSd);
        var second = collection.Shifts(random, runSd);
        var pairs = ImmutableArray.CreateBuilder<PairRecord>(collection.Day.Length);
        for (var i = 0; i < collection.Day.Length; i++)
        {
            var day = collection.Day[i];
            var baseline = Level + (Reach * ((2 * random.NextDouble()) - 1));
            var change = mean + second[day] - first[day] + (ChangeSd * random.NextNormal());
            pairs.Add(SimulatedPairs.Compared(i, baseline, baseline + change, collection));
        }

        return pairs.MoveToImmutable();
    }

    /// <summary>The mean of a normal change whose absolute value has a given mean: m(2Φ(m/s) − 1) + 2sφ(m/s).</summary>
    private static double MeanChange(double meanAbsolute, double deviation)
    {
        double low = 0;
        var high = meanAbsolute;
        while (high - low > 1e-12)
        {
            var m = (low + high) / 2;
            var z = m / deviation;
            var folded =
                (m * ((2 * Normal.Cdf(z)) - 1))
                + (2 * deviation * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI));
            (low, high) = folded < meanAbsolute ? (m, high) : (low, m);
        }

        return low;
    }
}
