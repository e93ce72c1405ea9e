using StabilityStudy.Core.Tests.Simulations.Scenarios;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>How often both usual criteria are met by a time point that is as it should be.</summary>
[Trait("lane", "slow")]
public sealed class PowerSimulationTests
{
    private static readonly int s_studies = LongProof.Setting("SIMULATED_STUDIES", 200);

    /// <summary>Planned study, n, and the power that an independent simulation gave, to its printed digits.</summary>
    public static TheoryData<int, int, double> Independent { get; } =
        new()
        {
            { 0, 20, 0.999 },
            { 1, 20, 0.69 },
            { 1, 40, 0.93 },
            { 1, 60, 0.985 },
            { 2, 20, 0.82 },
            { 2, 40, 0.99 },
            { 3, 20, 0.97 },
            { 4, 20, 0.63 },
            { 4, 40, 0.94 },
            { 4, 60, 0.99 },
        };

    [Theory]
    [MemberData(nameof(Independent))]
    public void Interval_and_count_have_the_planned_power(int planned, int n, double independent) =>
        SimulatedRateAssert.Between(
            independent - 0.005,
            Math.Min(independent + 0.005, 1),
            PowerScenarios.Planned[planned].ByIntervalAndCount(n).Run(s_studies)
        );

    /// <summary>The two criteria together lie between p₁ + p₂ − 1 and the smaller of the exact powers of each.</summary>
    [Theory]
    [MemberData(nameof(Independent))]
    public void Exact_powers_of_the_single_criteria_enclose_it(
        int planned,
        int n,
        double independent
    )
    {
        var study = PowerScenarios.Planned[planned];
        var (mean, share) = (study.OfMean(n), study.OfShare(n));

        Assert.InRange(independent, mean + share - 1 - 0.005, Math.Min(mean, share) + 0.005);
        SimulatedRateAssert.Between(
            mean + share - 1,
            Math.Min(mean, share),
            study.ByIntervalAndCount(n).Run(s_studies)
        );
    }

    [Theory]
    [InlineData(0.98, 0.95)]
    [InlineData(0.99, 0.99)]
    public void A_share_well_above_the_required_one_is_shown(double share, double independent)
    {
        Assert.Equal(independent, IndividualPower.Of(40, share, 0.85, 0.95), 0.006);
        SimulatedRateAssert.Is(
            IndividualPower.Of(40, share, 0.85, 0.95),
            PowerScenarios.ShareAlone(share, Collection.InOneRun(40)).Run(s_studies)
        );
    }

    /// <summary>The rule on runs takes a few points of power near the limit where days do not differ (long run 0.90 and 0.97 on five days).</summary>
    [Theory]
    [InlineData(0.98, 0.88)]
    [InlineData(0.99, 0.95)]
    public void The_rule_on_runs_costs_little_power(double share, double least) =>
        SimulatedRateAssert.Between(
            least,
            IndividualPower.Of(40, share, 0.85, 0.95),
            PowerScenarios.ShareAlone(share, Collection.On(5, 40)).Run(s_studies)
        );

    /// <summary>Independent, 3.5 points inside the limit with shared runs: 0.92 (5 days) to 0.97 (10 days) by the mean alone.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void Shared_runs_on_enough_days_leave_power(int days) =>
        SimulatedRateAssert.Between(
            0.92,
            1,
            PowerScenarios
                .WellInside.Supported(Collection.On(days, 40), RunScenarios.RunSd)
                .Run(s_studies)
        );
}
