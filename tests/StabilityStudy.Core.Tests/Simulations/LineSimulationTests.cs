using StabilityStudy.Core.Tests.Simulations.Scenarios;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>How often a change predicted by a line, at a level or at a delay, is called inside a limit that it reaches.</summary>
[Trait("lane", "slow")]
public sealed class LineSimulationTests
{
    private static readonly int s_levels = LongProof.Setting("SIMULATED_STUDIES", 120);
    private static readonly int s_drifts = LongProof.Setting("SIMULATED_STUDIES", 200);

    /// <summary>Independent, weighted Deming with the right ratio, by specimens alone: 0.044 to 0.059. The wider over days can only lower it.</summary>
    [Theory]
    [InlineData(20)]
    [InlineData(40)]
    public void A_change_at_a_level_is_claimed_at_most_five_times_in_a_hundred(int n) =>
        SimulatedRateAssert.AtMost(
            0.059,
            LevelScenarios.At(50, n, ChangeShape.Normal).Run(s_levels)
        );

    /// <summary>By specimens alone 0.12 (long run).</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void A_level_in_shared_runs_is_claimed_at_most_five_times_in_a_hundred(int days) =>
        SimulatedRateAssert.AtMost(0.05, LevelScenarios.SharedRuns(80, days).Run(s_levels));

    /// <summary>Without the doubt about skewness 0.09 (long run).</summary>
    [Fact]
    public void A_level_beside_very_skewed_changes_is_claimed_at_most_five_times_in_a_hundred() =>
        SimulatedRateAssert.AtMost(
            0.05,
            LevelScenarios.At(65, 80, ChangeShape.VerySkewed).Run(s_levels)
        );

    [Fact]
    public void A_level_that_few_baselines_can_lie_around_is_never_claimed() =>
        Assert.Equal(0, LevelScenarios.At(50, 5, ChangeShape.Normal).Run(s_levels).Claims);

    /// <summary>By chance a sample can spread further than its group; the long run gave 0.0005.</summary>
    [Fact]
    public void A_level_of_a_narrow_group_is_hardly_ever_claimed() =>
        SimulatedRateAssert.AtMost(0.001, LevelScenarios.NarrowGroup(40).Run(s_levels));

    [Fact]
    public void A_level_of_rounded_results_is_claimed_at_most_five_times_in_a_hundred() =>
        SimulatedRateAssert.AtMost(0.059, LevelScenarios.Rounded(40).Run(s_levels));

    /// <summary>By the line alone 0.76 and 0.98, and 0.09 and 0.17 where the change grows with the level (2,000 studies each).</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    public void A_level_beside_which_the_change_sets_in_or_bends_is_claimed_at_most_five_times_in_a_hundred(
        int n
    )
    {
        SimulatedRateAssert.AtMost(
            0.05,
            BentScenarios.Threshold(-MeanScenarios.Limit, n, byRule: true).Run(s_levels)
        );
        SimulatedRateAssert.AtMost(0.01, BentScenarios.Steeper(n, byRule: true).Run(s_levels));
    }

    /// <summary>Independent, specimen slopes: 0.048 to 0.053; taking the wider over days can only lower it.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(40)]
    public void Drift_is_claimed_at_most_five_times_in_a_hundred(int n)
    {
        SimulatedRateAssert.AtMost(0.053, DriftScenarios.Of(n, ChangeShape.Normal).Run(s_drifts));
        SimulatedRateAssert.AtMost(0.053, DriftScenarios.OfUnequalTimes(n).Run(s_drifts));
    }

    [Fact]
    public void Drift_holds_in_shared_runs() =>
        SimulatedRateAssert.AtMost(0.053, DriftScenarios.SharedRuns(40, 5).Run(s_drifts));

    [Fact]
    public void A_wrong_shape_of_drift_is_seen_as_a_misfit_and_all_shapes_together_hold_it_too()
    {
        var wrong = DriftScenarios.OfShapes(40, DriftShape.Linear, DriftShape.Logarithmic);
        var all = DriftScenarios.OfShapes(
            40,
            DriftShape.Linear,
            DriftShape.Linear,
            DriftShape.Logarithmic,
            DriftShape.Quadratic
        );

        SimulatedRateAssert.AtMost(0.05, wrong.Run(s_drifts));
        SimulatedRateAssert.AtMost(0.05, all.Run(s_drifts));
    }
}
