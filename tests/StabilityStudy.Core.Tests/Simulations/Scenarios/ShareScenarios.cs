using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>The true share of specimens within the allowable difference is the required one, or a stated one.</summary>
internal static class ShareScenarios
{
    private const double Allowed = 15;
    private const double Required = 0.85;

    public static SimulatedStudy Exact { get; } =
        SimulatedStudy.Of([SmallProtocol.Each], SmallProtocol.EachCriterion);

    public static SimulatedStudy PointShare { get; } =
        SimulatedStudy.Of(
            [SmallProtocol.Each],
            SmallProtocol.EachCriterion with
            {
                SharePercentMinimum = 95,
                Rule = DecisionRule.PointOnly,
            }
        );

    public static IEnumerable<Scenario> All =>
        [
            .. MeanScenarios.Sizes.Select(n => AtRequired(Collection.On(5, n), runSd: 0)),
            .. MeanScenarios.Sizes.Select(n => AtRequired(Collection.On(5, n), runSd: 1)),
            .. MeanScenarios.Sizes.Select(n => AtRequired(Collection.On(10, n), runSd: 1)),
            .. MeanScenarios.Sizes.Select(n => AtRequired(Collection.On(5, n), runSd: 2)),
            .. MeanScenarios.Sizes.Select(RoundedInr),
            .. new[] { 20, 40, 80 }.Select(PointShareAt90),
            FailedTubes(PointShare, "point share of 95 %, true share 90 %", 0.9, drop: true),
            FailedTubes(PointShare, "point share of 95 %, true share 90 %", 0.9, drop: false),
            FailedTubes(Exact, "lower bound of 85 %, true share 85 %", 0.85, drop: true),
            FailedTubes(Exact, "lower bound of 85 %, true share 85 %", 0.85, drop: false),
        ];

    /// <summary>Changes of SD 3 % around a mean so far up that the share within is 85 %; only how many are outside counts, so their distribution plays no part.</summary>
    public static Scenario AtRequired(Collection collection, double runSd)
    {
        var total = Math.Sqrt(
            (MeanScenarios.ChangeSd * MeanScenarios.ChangeSd) + (2 * runSd * runSd)
        );
        var cell = new SimulatedCell(
            collection,
            Allowed - (total * Normal.Quantile(Required)),
            MeanScenarios.ChangeSd,
            ChangeShape.Normal
        )
        {
            RunSdPercent = runSd,
        };
        return new(
            "Share within the allowable difference (lower bound of 85 %)",
            runSd == 0
                ? "specimens independent of each other"
                : FormattableString.Invariant(
                    $"shared runs of SD {runSd:0} %, change SD 3 %; {collection.Name}"
                ),
            collection.Day.Length,
            Reading.Controlled,
            random => Exact.Supports(cell.Draw(random))
        );
    }

    /// <summary>The share is 85 % of changes before rounding; a reported change of 0.5 is within.</summary>
    public static Scenario RoundedInr(int specimens)
    {
        var study = SimulatedStudy.Of(
            [new("each", null, 0.5m, "invented")],
            SmallProtocol.EachCriterion
        );
        var deviation = 0.5 / Normal.Quantile(1 - ((1 - Required) / 2));
        var collection = Collection.On(5, specimens);
        return new(
            "Share within the allowable difference (lower bound of 85 %)",
            "INR reported to 0.1, allowance 0.5; 85 % within before rounding",
            specimens,
            Reading.NotControlled,
            random =>
                study.Supports(
                    Draw(
                        collection,
                        i =>
                        {
                            var level = 2.6 * Math.Exp(0.2 * random.NextNormal());
                            return SimulatedPairs.Compared(
                                i,
                                level,
                                level + (deviation * random.NextNormal()),
                                collection,
                                decimals: 1
                            );
                        }
                    )
                )
        );
    }

    public static Scenario PointShareAt90(int specimens) =>
        new(
            "Share within, rule on the observed share alone (95 %)",
            "true share 90 %",
            specimens,
            Reading.NotControlled,
            random => PointShare.Supports(Outside(random, specimens, 0.9, Fate.Measured))
        );

    /// <summary>Of the specimens that do not stay within, half give no result because their delayed tube failed.</summary>
    public static Scenario FailedTubes(
        SimulatedStudy study,
        string rule,
        double trueShare,
        bool drop
    ) =>
        new(
            "Delayed tubes that failed: half of the unstable specimens",
            rule + (drop ? "; recorded as too little plasma" : "; recorded as clotted"),
            40,
            ReferenceEquals(study, Exact) ? Reading.Controlled : Reading.NotControlled,
            random =>
                study.Supports(Outside(random, 40, trueShare, drop ? Fate.LeftOut : Fate.Failed))
        );

    private enum Fate
    {
        Measured,
        Failed,
        LeftOut,
    }

    private static ImmutableArray<PairRecord> Outside(
        SeededRandom random,
        int specimens,
        double trueShare,
        Fate halfOfUnstable
    )
    {
        var collection = Collection.On(5, specimens);
        return Draw(
            collection,
            i =>
                random.NextDouble() < trueShare ? SimulatedPairs.Compared(i, 30, 30.3, collection)
                : random.NextDouble() < 0.5 || halfOfUnstable == Fate.Measured
                    ? SimulatedPairs.Compared(i, 30, 36, collection)
                : halfOfUnstable == Fate.Failed ? SimulatedPairs.Failed(i, 30, collection)
                : SimulatedPairs.SaidTooLittle(i, 30, collection)
        );
    }

    private static ImmutableArray<PairRecord> Draw(
        Collection collection,
        Func<int, PairRecord> specimen
    ) => [.. Enumerable.Range(0, collection.Day.Length).Select(specimen)];
}
