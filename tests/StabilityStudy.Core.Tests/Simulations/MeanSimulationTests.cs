using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>
/// How often a mean change is called supported although it is the allowable bias. Figures called independent come from a
/// simulation written beforehand in another language from the definitions alone.
/// </summary>
[Trait("lane", "slow")]
public sealed class MeanSimulationTests
{
    private static readonly int s_studies = LongProof.Setting("SIMULATED_STUDIES", 400);

    public static TheoryData<int> Sizes { get; } = [.. MeanScenarios.Sizes];

    /// <summary>Independent: 0.043 to 0.051 for normal, t₃ and symmetric contamination.</summary>
    [Theory]
    [MemberData(nameof(Sizes))]
    public void Normal_changes_are_claimed_about_five_times_in_a_hundred(int n) =>
        SimulatedRateAssert.Between(
            0.043,
            0.051,
            MeanScenarios.OfShape(ChangeShape.Normal, Collection.InOneRun(n)).Run(s_studies)
        );

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(80)]
    public void Heavy_tails_on_both_sides_are_claimed_at_most_five_times_in_a_hundred(int n)
    {
        SimulatedRateAssert.AtMost(
            0.051,
            MeanScenarios.OfShape(ChangeShape.HeavyTails, Collection.On(5, n)).Run(s_studies)
        );
        SimulatedRateAssert.AtMost(
            0.051,
            MeanScenarios.OfShape(ChangeShape.Contaminated, Collection.On(5, n)).Run(s_studies)
        );
    }

    /// <summary>
    /// Independent, without run error and with hardly any imprecision: 0.029 to 0.045 for σ 0.5, and for σ 1 0.058 to 0.074 with 40 specimens, 0.045 to 0.056 with 80. The rare large changes that the mean needs may not be in
    /// the sample, and then no interval sees them.
    /// </summary>
    [Theory]
    [InlineData(40, 0.074)]
    [InlineData(80, 0.056)]
    public void From_forty_specimens_on_the_lengthened_interval_holds_a_skewed_change(
        int n,
        double verySkewed
    )
    {
        SimulatedRateAssert.AtMost(
            0.050,
            MeanScenarios.OfShape(ChangeShape.Skewed, Collection.InOneRun(n)).Run(s_studies)
        );
        SimulatedRateAssert.AtMost(
            verySkewed,
            MeanScenarios.OfShape(ChangeShape.VerySkewed, Collection.InOneRun(n)).Run(s_studies)
        );
    }

    [Fact]
    public void Rounded_results_are_claimed_at_most_five_times_in_a_hundred()
    {
        SimulatedRateAssert.AtMost(0.05, MeanScenarios.InrOnAntagonist(40).Run(s_studies));
        SimulatedRateAssert.AtMost(0.05, MeanScenarios.InrNearOne(40).Run(s_studies));
    }

    [Fact]
    public void A_fall_from_a_noisy_baseline_is_held_on_the_log_ratio_scale() =>
        SimulatedRateAssert.AtMost(
            0.05,
            MeanScenarios.FallingFromNoisyBaseline(10, ChangeScale.LogRatio).Run(s_studies)
        );

    [Fact]
    public void A_rule_on_the_mean_alone_claims_every_other_time() =>
        SimulatedRateAssert.Is(0.5, MeanScenarios.MeanOnly(40).Run(s_studies));

    [Theory]
    [InlineData(1, 0.30)]
    [InlineData(2, 0.23)]
    [InlineData(5, 0.14)]
    [InlineData(10, 0.09)]
    public void Specimens_alone_would_claim_far_too_often_in_shared_runs(
        int days,
        double independent
    ) =>
        SimulatedRateAssert.Is(
            independent,
            RunScenarios.SpecimensAlone(Collection.On(days, 40)).Run(s_studies)
        );

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void The_wider_interval_holds_in_shared_runs(int days) =>
        SimulatedRateAssert.Between(
            0.035,
            0.047,
            RunScenarios.Tool(Collection.On(days, 40)).Run(s_studies)
        );

    [Fact]
    public void Days_of_very_unequal_size_gain_nothing() =>
        SimulatedRateAssert.AtMost(0.05, RunScenarios.Tool(Collection.Lopsided(40)).Run(s_studies));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Fewer_days_than_required_claim_nothing(int days) =>
        Assert.Equal(0, RunScenarios.Tool(Collection.On(days, 40)).Run(s_studies / 10).Claims);
}
