using StabilityStudy.Core.Tests.Simulations.Scenarios;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>
/// How often a share of specimens is called shown although it is the required one. Of independent specimens the exact
/// binomial value is a ceiling, which the rule on runs can only lower; in shared runs that rule keeps the rate below 0.05.
/// </summary>
[Trait("lane", "slow")]
public sealed class ShareSimulationTests
{
    private static readonly int s_studies = LongProof.Setting("SIMULATED_STUDIES", 200);

    public static TheoryData<int> Sizes { get; } = [.. MeanScenarios.Sizes];

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_true_share_of_85_percent_is_claimed_at_most_as_often_as_the_binomial_says(
        int n
    ) =>
        SimulatedRateAssert.AtMost(
            IndividualPower.Of(n, 0.85, 0.85, 0.95),
            ShareScenarios.AtRequired(Collection.On(5, n), runSd: 0).Run(s_studies)
        );

    [Theory]
    [MemberData(nameof(Sizes))]
    public void In_one_run_it_is_claimed_as_often_as_the_binomial_says(int n) =>
        SimulatedRateAssert.Is(
            IndividualPower.Of(n, 0.85, 0.85, 0.95),
            ShareScenarios.AtRequired(Collection.InOneRun(n), runSd: 0).Run(s_studies)
        );

    /// <summary>As independent specimens alone 0.10, 0.19 and 0.24 at a run SD of two thirds of that of the changes (long run of the rule without runs).</summary>
    [Theory]
    [InlineData(20, 5, 1)]
    [InlineData(40, 5, 1)]
    [InlineData(80, 5, 1)]
    [InlineData(40, 10, 1)]
    [InlineData(20, 5, 2)]
    [InlineData(40, 5, 2)]
    [InlineData(80, 5, 2)]
    public void In_shared_runs_it_is_claimed_at_most_five_times_in_a_hundred(
        int n,
        int days,
        double runSd
    ) =>
        SimulatedRateAssert.AtMost(
            0.05,
            ShareScenarios.AtRequired(Collection.On(days, n), runSd).Run(s_studies)
        );

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void So_few_specimens_never_show_85_percent(int n) =>
        Assert.Equal(
            0,
            ShareScenarios.AtRequired(Collection.On(5, n), runSd: 0).Run(s_studies / 10).Claims
        );

    /// <summary>P(Bin(n, 0.9) ≥ 19, 38, 76); independent simulation: 0.39, 0.22, 0.09.</summary>
    [Theory]
    [InlineData(20, 0.3917)]
    [InlineData(40, 0.2228)]
    [InlineData(80, 0.0880)]
    public void A_rule_on_the_observed_share_claims_95_percent_of_a_true_90(
        int n,
        double probability
    ) => SimulatedRateAssert.Is(probability, ShareScenarios.PointShareAt90(n).Run(s_studies));

    /// <summary>Independent: 0.22 counted outside, 0.44 were they dropped.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Failed_tubes_count_whatever_is_said_of_them(bool drop) =>
        SimulatedRateAssert.Between(
            0.215,
            0.225,
            ShareScenarios.FailedTubes(ShareScenarios.PointShare, "", 0.9, drop).Run(s_studies)
        );

    [Fact]
    public void Failed_tubes_that_count_leave_the_exact_rule_as_it_is() =>
        SimulatedRateAssert.Is(
            IndividualPower.Of(40, 0.85, 0.85, 0.95),
            ShareScenarios.FailedTubes(ShareScenarios.Exact, "", 0.85, drop: false).Run(s_studies)
        );

    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    public void Changes_of_side_are_claimed_few_at_most_as_often_as_the_binomial_says(int n) =>
        SimulatedRateAssert.AtMost(
            IndividualPower.Of(n, 0.90, 0.90, 0.95),
            SideScenarios.Reclassified(n, runSd: 0).Run(s_studies)
        );

    /// <summary>Independent: 1.00 at true changes of 0 to 3 %, and a weak criterion: 15 % cross clearly only at a true change of 14 %.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void Rounding_near_a_level_does_not_count_as_a_clear_change_of_side(
        double changePercent
    ) => SimulatedRateAssert.Is(0.999, SideScenarios.Inr(changePercent, 40).Run(s_studies));

    [Theory]
    [InlineData(20)]
    [InlineData(40)]
    public void Classes_are_claimed_kept_at_most_as_often_as_the_binomial_says(int n) =>
        SimulatedRateAssert.AtMost(
            IndividualPower.Of(n, 0.85, 0.85, 0.95),
            SideScenarios.Classified(n, runSd: 0).Run(s_studies)
        );

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void Sides_and_classes_in_shared_runs_are_claimed_at_most_five_times_in_a_hundred(
        double runSd
    )
    {
        SimulatedRateAssert.AtMost(0.05, SideScenarios.Reclassified(80, runSd).Run(s_studies));
        SimulatedRateAssert.AtMost(0.05, SideScenarios.Classified(80, runSd).Run(s_studies));
    }
}
