using System.Collections.Immutable;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Three time points of the same specimens, concluded in order; a claim is any time point called supported whose true mean change is the limit.</summary>
internal static class SequenceScenarios
{
    private const string Section = "Three time points in sequence, mean change at the limit";
    private const int Many = 15;

    private static readonly ImmutableArray<double> s_allAtLimit = [7.5, 7.5, 7.5];
    private static readonly ImmutableArray<double> s_firstInside = [4, 7.5, 7.5];

    public static IEnumerable<Scenario> All =>
        [
            .. new[] { 0, 0.5, 0.9 }.SelectMany(correlation =>
                new[] { 10, 40 }.SelectMany(n =>
                    new[]
                    {
                        InSequence(n, correlation),
                        InSequenceAfterSupported(n, correlation),
                        WithoutStopping(n, correlation),
                    }
                )
            ),
            ManySequences(10),
        ];

    public static Scenario InSequence(int specimens, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"all three at the limit, correlation {correlation:0.0}; 5 days"
            ),
            specimens,
            Reading.Controlled,
            random => Claims(Sequence(random, specimens, s_allAtLimit, correlation), s_allAtLimit)
        );

    public static Scenario InSequenceAfterSupported(int specimens, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"the first well inside, the others at the limit, correlation {correlation:0.0}; 5 days"
            ),
            specimens,
            Reading.Controlled,
            random => Claims(Sequence(random, specimens, s_firstInside, correlation), s_firstInside)
        );

    /// <summary>What would be claimed were each time point concluded whatever the earlier ones said.</summary>
    public static Scenario WithoutStopping(int specimens, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"all three at the limit, correlation {correlation:0.0}; each on its own, which is not the rule"
            ),
            specimens,
            Reading.NotControlled,
            random => Claims(Each(random, specimens, s_allAtLimit, correlation), s_allAtLimit)
        );

    /// <summary>As many analytes and groups, each with its own sequence at its limit.</summary>
    public static Scenario ManySequences(int specimens) =>
        Of(
            "fifteen independent sequences in one study, at least one claim",
            specimens,
            Reading.NotControlled,
            random =>
                Enumerable
                    .Range(0, Many)
                    .Any(_ => Claims(Sequence(random, specimens, s_allAtLimit, 0.5), s_allAtLimit))
        ) with
        {
            Work = Many,
        };

    private static Scenario Of(
        string data,
        int specimens,
        Reading reading,
        Func<SeededRandom, bool> claims
    ) => new(Section, data, specimens, reading, claims) { Work = s_allAtLimit.Length };

    private static bool Claims(
        ImmutableArray<Conclusion> conclusions,
        ImmutableArray<double> truth
    ) =>
        conclusions
            .Where(
                (conclusion, i) =>
                    truth[i] >= MeanScenarios.Limit && conclusion == Conclusion.Supported
            )
            .Any();

    private static ImmutableArray<Conclusion> Sequence(
        SeededRandom random,
        int specimens,
        ImmutableArray<double> truth,
        double correlation
    ) => CellEvaluation.InSequence(Each(random, specimens, truth, correlation));

    private static ImmutableArray<Conclusion> Each(
        SeededRandom random,
        int specimens,
        ImmutableArray<double> truth,
        double correlation
    )
    {
        var collection = Collection.On(5, specimens);
        var ofSpecimen = Enumerable.Range(0, specimens).Select(_ => random.NextNormal()).ToArray();
        return
        [
            .. truth.Select(percent =>
                SimulatedStudy.OfMean.Conclude([
                    Cell(random, collection, percent, correlation, ofSpecimen),
                ])
            ),
        ];
    }

    private static ImmutableArray<PairRecord> Cell(
        SeededRandom random,
        Collection collection,
        double mean,
        double correlation,
        double[] ofSpecimen
    ) =>
        [
            .. ofSpecimen.Select(
                (own, i) =>
                {
                    var deviation =
                        (Math.Sqrt(correlation) * own)
                        + (Math.Sqrt(1 - correlation) * random.NextNormal());
                    return SimulatedPairs.Compared(
                        i,
                        30,
                        30 * (1 + ((mean + (MeanScenarios.ChangeSd * deviation)) / 100)),
                        collection
                    );
                }
            ),
        ];
}
