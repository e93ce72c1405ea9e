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
                        InSequence(Collection.InOneRun(n), correlation),
                        InSequence(Collection.On(5, n), correlation),
                        InSequenceAfterSupported(Collection.On(5, n), correlation),
                        WithoutStopping(Collection.On(5, n), correlation),
                    }
                )
            ),
            ManySequences(Collection.InOneRun(10)),
            ManySequences(Collection.On(5, 10)),
        ];

    public static Scenario InSequence(Collection collection, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"all three at the limit, correlation {correlation:0.0}; {collection.Name}"
            ),
            collection,
            Reading.Controlled,
            random => Claims(Sequence(random, collection, s_allAtLimit, correlation), s_allAtLimit)
        );

    public static Scenario InSequenceAfterSupported(Collection collection, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"the first well inside, the others at the limit, correlation {correlation:0.0}; {collection.Name}"
            ),
            collection,
            Reading.Controlled,
            random =>
                Claims(Sequence(random, collection, s_firstInside, correlation), s_firstInside)
        );

    /// <summary>What would be claimed were each time point concluded whatever the earlier ones said.</summary>
    public static Scenario WithoutStopping(Collection collection, double correlation) =>
        Of(
            FormattableString.Invariant(
                $"all three at the limit, correlation {correlation:0.0}; each on its own, which is not the rule"
            ),
            collection,
            Reading.NotControlled,
            random => Claims(Each(random, collection, s_allAtLimit, correlation), s_allAtLimit)
        );

    /// <summary>As many analytes and groups, each with its own sequence at its limit.</summary>
    public static Scenario ManySequences(Collection collection) =>
        Of(
            $"fifteen independent sequences in one study, at least one claim; {collection.Name}",
            collection,
            Reading.NotControlled,
            random =>
                Enumerable
                    .Range(0, Many)
                    .Any(_ => Claims(Sequence(random, collection, s_allAtLimit, 0.5), s_allAtLimit))
        ) with
        {
            Work = Many,
        };

    private static Scenario Of(
        string data,
        Collection collection,
        Reading reading,
        Func<SeededRandom, bool> claims
    ) => new(Section, data, collection.Day.Length, reading, claims) { Work = s_allAtLimit.Length };

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
        Collection collection,
        ImmutableArray<double> truth,
        double correlation
    ) => CellEvaluation.InSequence(Each(random, collection, truth, correlation));

    private static ImmutableArray<Conclusion> Each(
        SeededRandom random,
        Collection collection,
        ImmutableArray<double> truth,
        double correlation
    )
    {
        var ofSpecimen = Enumerable
            .Range(0, collection.Day.Length)
            .Select(_ => random.NextNormal())
            .ToArray();
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
