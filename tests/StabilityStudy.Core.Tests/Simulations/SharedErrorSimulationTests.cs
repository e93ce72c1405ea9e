using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>
/// False support where runs, baselines, calibration and losses act unseen, and the power that is left. Figures called independent come from a simulation of the same rules, written apart from this program before they were
/// built in it; its standard errors are 0.001 to 0.003.
/// </summary>
[Trait("lane", "slow")]
public sealed class SharedErrorSimulationTests
{
    private static readonly int s_studies = LongProof.Setting("SIMULATED_STUDIES", 200);

    /// <summary>Independent: 0.84 without the doubt, 0.038 with it. Over a narrower range (SD of ln x 0.35) the doubt lets 0.062 through, which METHODS.md names.</summary>
    [Fact]
    public void A_mean_that_hides_a_change_at_high_levels_is_hardly_ever_supported()
    {
        SimulatedRateAssert.Between(
            0.8,
            1,
            SharedErrorScenarios.Heparin(40, byRule: false, spread: 0.40).Run(s_studies)
        );
        SimulatedRateAssert.AtMost(
            0.038,
            SharedErrorScenarios.Heparin(40, byRule: true, spread: 0.40).Run(s_studies)
        );
    }

    /// <summary>Independent: 0.921 and 0.950 without the doubt; with 80 specimens 0.968.</summary>
    [Theory]
    [InlineData(40, 0.921)]
    [InlineData(80, 0.968)]
    public void The_same_change_over_a_wide_range_keeps_its_power(int n, double independent) =>
        SimulatedRateAssert.Between(
            independent,
            1,
            SharedErrorScenarios.WideRange(4, n).Run(s_studies)
        );

    /// <summary>Independent: without clusters of runs 0.23 to 0.28 with one delayed run, 0.14 to 0.18 with two.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Delayed_tubes_saved_up_for_fewer_runs_than_the_minimum_support_nothing(int runs) =>
        Assert.Equal(0, SharedErrorScenarios.DelayedRuns(runs, 2).Run(s_studies).Claims);

    /// <summary>Independent: 0.037 to 0.044 with five delayed runs, 0.042 to 0.046 with ten.</summary>
    [Theory]
    [InlineData(5, 2)]
    [InlineData(5, 3)]
    [InlineData(10, 2)]
    public void Delayed_runs_are_clusters(int runs, double runSd) =>
        SimulatedRateAssert.Between(
            0.037,
            0.046,
            SharedErrorScenarios.DelayedRuns(runs, runSd).Run(s_studies)
        );

    /// <summary>Independent: 0.035 to 0.042, and 0.040 to 0.066 without the two-way term.</summary>
    [Theory]
    [InlineData(5, 5)]
    [InlineData(8, 5)]
    [InlineData(10, 8)]
    public void Runs_that_cross_are_held_by_the_two_way_interval(int baseline, int delayed) =>
        SimulatedRateAssert.Between(
            0.035,
            0.042,
            SharedErrorScenarios.Crossed(baseline, delayed).Run(s_studies)
        );

    /// <summary>Independent: 0.032 to 0.047, 0.035 to 0.046 and 0.02 to 0.03.</summary>
    [Theory]
    [InlineData(0.025, 14, 0.032, 0.047)]
    [InlineData(0.05, 18, 0.035, 0.046)]
    [InlineData(0.10, 25, 0.02, 0.03)]
    public void Few_specimens_that_change_far_more_are_held_by_the_lengthened_interval(
        double share,
        double percent,
        double lowest,
        double highest
    ) =>
        SimulatedRateAssert.Between(
            lowest,
            highest,
            SharedErrorScenarios.OddSpecimens(share, percent, 40).Run(s_studies)
        );

    /// <summary>Independent: by the rule 0.039 to 0.048; read from the baseline 0.24, 0.55, 0.93 at 6 h and 0.13, 0.26, 0.59 at 24 h.</summary>
    [Theory]
    [InlineData(15, 6, 0.24)]
    [InlineData(30, 6, 0.55)]
    [InlineData(60, 6, 0.93)]
    [InlineData(60, 24, 0.59)]
    public void The_value_at_collection_holds_what_a_late_baseline_hides(
        double minutes,
        double hours,
        double fromBaseline
    )
    {
        SimulatedRateAssert.Between(
            0.039,
            0.048,
            SharedErrorScenarios.SinceCollection(minutes, hours, byRule: true).Run(s_studies)
        );
        SimulatedRateAssert.Is(
            fromBaseline,
            SharedErrorScenarios.SinceCollection(minutes, hours, byRule: false).Run(s_studies)
        );
    }

    /// <summary>Independent: 0.034 to 0.040 with two bridging results a run, 0.70 and 0.945 without.</summary>
    [Theory]
    [InlineData(7.5, -2, 0.70, 0.034, 0.040)]
    [InlineData(7.5, -3, 0.945, 0.034, 0.040)]
    [InlineData(8.5, -3, 0.74, 0, 0.001)]
    public void A_bridging_plasma_holds_runs_that_moved(
        double truth,
        double runs,
        double without,
        double lowest,
        double highest
    )
    {
        SimulatedRateAssert.Is(without, SharedErrorScenarios.Moved(truth, runs, 0).Run(s_studies));
        SimulatedRateAssert.Between(
            lowest,
            highest,
            SharedErrorScenarios.Moved(truth, runs, 2).Run(s_studies)
        );
    }

    /// <summary>Independent: 0.020 to 0.041.</summary>
    [Theory]
    [InlineData(5, 0)]
    [InlineData(5, 2)]
    [InlineData(10, 3)]
    public void A_share_moved_by_its_runs_is_claimed_at_most_as_often_as_stated(
        int days,
        double runSd
    ) =>
        SimulatedRateAssert.AtMost(
            0.041,
            SharedErrorScenarios.AtShare(Collection.On(days, 40), runSd).Run(s_studies)
        );

    /// <summary>Independent: 0.028 to 0.039.</summary>
    [Theory]
    [InlineData(15)]
    [InlineData(60)]
    public void A_share_since_collection_is_claimed_at_most_as_often_as_stated(double minutes) =>
        SimulatedRateAssert.AtMost(
            0.039,
            SharedErrorScenarios.ShareSinceCollection(minutes).Run(s_studies)
        );

    /// <summary>Independent: 0.03 to 0.054, whatever share of the unstable specimens is lost; 0.09 to 0.37 where losses are left out.</summary>
    [Theory]
    [InlineData(0.5, 40)]
    [InlineData(0.75, 40)]
    [InlineData(1, 80)]
    public void Every_loss_counts_so_that_losing_the_unstable_ones_gains_nothing(
        double lost,
        int specimens
    ) =>
        SimulatedRateAssert.Between(
            0.03,
            0.054,
            SharedErrorScenarios.Lost(lost, specimens).Run(s_studies)
        );

    /// <summary>Required: 0.99, 0.98, 0.94, and with 2.5 % of specimens at +14 % 0.97, 0.94, 0.79.</summary>
    [Theory]
    [InlineData(0, false, 0.99)]
    [InlineData(2, false, 0.98)]
    [InlineData(4, false, 0.94)]
    [InlineData(0, true, 0.97)]
    [InlineData(2, true, 0.94)]
    [InlineData(4, true, 0.79)]
    public void Forty_specimens_on_ten_days_have_the_stated_power(
        double percent,
        bool odd,
        double atLeast
    ) =>
        SimulatedRateAssert.Between(
            atLeast,
            1,
            SharedErrorScenarios.Power(percent, odd).Run(s_studies)
        );
}
