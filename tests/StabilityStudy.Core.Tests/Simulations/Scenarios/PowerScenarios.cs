using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// How often the usual two criteria together, a 90 % interval of the mean and a lower bound of 85 % of single specimens,
/// support a time point that is as it should be.
/// </summary>
internal static class PowerScenarios
{
    public static ImmutableArray<PlannedStudy> Planned { get; } =
    [
        new("aPTT", 3, 3, 7.5m, 15),
        new("aPTT", 6, 3, 7.5m, 15),
        new("INR under a vitamin K antagonist", 3, 5.1, 7.5m, 15),
        new("factor VIII", -5, 5, 10, 20),
        new("factor VIII", -5, 5, 10, 15),
    ];

    /// <summary>3.5 points inside the allowable bias.</summary>
    public static PlannedStudy WellInside { get; } = new("aPTT", 4, 3, 7.5m, 15);

    public static ImmutableArray<int> Sizes { get; } = [20, 40, 60];

    public static IEnumerable<Scenario> All =>
        [
            .. Planned.SelectMany(planned =>
                Sizes.SelectMany(n =>
                    new[]
                    {
                        planned.ByIntervalAndCount(n),
                        planned.Supported(Collection.InOneRun(n), 0),
                        planned.Supported(Collection.On(10, n), 0),
                    }
                )
            ),
            .. new[] { 5, 10 }.Select(days =>
                WellInside.Supported(Collection.On(days, 40), RunScenarios.RunSd)
            ),
            .. new[] { 0.98, 0.99 }.SelectMany(share =>
                new[]
                {
                    Collection.InOneRun(40),
                    Collection.On(5, 40),
                    Collection.On(10, 40),
                }.Select(collection => ShareAlone(share, collection))
            ),
        ];

    public static Scenario ShareAlone(double trueShare, Collection collection)
    {
        var cell = new SimulatedCell(
            collection,
            15 - (3 * Normal.Quantile(trueShare)),
            3,
            ChangeShape.Normal
        );
        return new(
            "Power of a lower bound of 85 % alone",
            FormattableString.Invariant(
                $"true share within {100 * trueShare:0} %; {collection.Name}"
            ),
            collection.Day.Length,
            Reading.Power,
            random => ShareScenarios.Exact.Supports(cell.Draw(random))
        );
    }
}

/// <summary>A true change and the two limits it is held to.</summary>
/// <param name="Analyte">Name in the table.</param>
/// <param name="Mean">True mean change, percent.</param>
/// <param name="Sd">SD of the change among specimens, percent.</param>
/// <param name="Bias">Allowable bias, percent.</param>
/// <param name="Each">Allowable difference of a specimen, percent.</param>
internal sealed record PlannedStudy(
    string Analyte,
    double Mean,
    double Sd,
    decimal Bias,
    decimal Each
)
{
    /// <summary>Exact power of the mean alone, without regard to days.</summary>
    public double OfMean(int specimens) =>
        EquivalencePower.Of(specimens, Mean, Sd, -(double)Bias, (double)Bias, 0.90);

    /// <summary>Exact power of the share alone.</summary>
    public double OfShare(int specimens)
    {
        var each = (double)Each;
        var inside = Normal.Cdf((each - Mean) / Sd) - Normal.Cdf((-each - Mean) / Sd);
        return IndividualPower.Of(specimens, inside, 0.85, 0.95);
    }

    /// <summary>The two criteria as planned: interval inside and few enough outside, whatever doubts there are beside.</summary>
    public Scenario ByIntervalAndCount(int specimens) =>
        Of(
            Collection.InOneRun(specimens),
            0,
            "interval and count alone, as planned",
            (study, pairs) =>
                study.Criteria([pairs]) is [var mean, { Verdict: Verdict.Met }]
                && mean.Reasons.Any(reason =>
                    reason is IntervalReason { Place: IntervalPlace.Inside }
                )
        );

    /// <summary>What is concluded in the end.</summary>
    public Scenario Supported(Collection collection, double runSd) =>
        Of(
            collection,
            runSd,
            runSd == 0
                ? collection.Name
                : FormattableString.Invariant($"shared runs of SD {runSd} %, {collection.Name}"),
            (study, pairs) => study.Supports([pairs])
        );

    private Scenario Of(
        Collection collection,
        double runSd,
        string how,
        Func<SimulatedStudy, ImmutableArray<PairRecord>, bool> claims
    )
    {
        var study = SimulatedStudy.Of(
            [new("bias", Bias, null, "invented"), new("each", Each, null, "invented")],
            SmallProtocol.MeanCriterion,
            SmallProtocol.EachCriterion
        );
        var cell = new SimulatedCell(collection, Mean, Sd, ChangeShape.Normal)
        {
            RunSdPercent = runSd,
        };
        return new(
            "Power of both criteria together",
            FormattableString.Invariant(
                $"{Analyte} {Mean:+0;−0} %, SD {Sd} %, limits {Bias}/{Each} %; {how}"
            ),
            collection.Day.Length,
            Reading.Power,
            random => claims(study, cell.Draw(random))
        );
    }
}
