using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class PairStatusTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of([6], ["30.0 | 30.5", "31.0 | 31.2"]);

    private static PairRecord First(SmallStudy study) => study.Cell().Pairs[0];

    [Fact]
    public void A_pair_in_which_all_is_well_is_compared()
    {
        var pair = First(s_study);

        Assert.Equal(PairStatus.Compared, pair.Status);
        Assert.Equal("", pair.Reason);
        Assert.Equal((30.0m, 30.5m), pair.Values());
    }

    [Fact]
    public void A_short_fill_makes_a_tube_ineligible() =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(s_study.Tube(0, 6, tube => tube with { FillPercent = 89.9m })).Status
        );

    [Fact]
    public void A_fill_exactly_at_the_minimum_is_enough() =>
        Assert.Equal(
            PairStatus.Compared,
            First(s_study.Tube(0, 6, tube => tube with { FillPercent = 90.0m })).Status
        );

    [Fact]
    public void A_hematocrit_above_the_maximum_makes_the_specimen_ineligible() =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(s_study.Tube(0, 0, tube => tube with { HematocritPercent = 55.1m })).Status
        );

    [Fact]
    public void A_clotted_baseline_tube_makes_the_specimen_ineligible() =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(s_study.Tube(0, 0, tube => tube with { Clot = ClotCheck.Yes })).Status
        );

    [Theory]
    [InlineData(Origin.Spiked)]
    [InlineData(Origin.Pool)]
    public void Spiked_or_pooled_material_never_stands_for_whole_blood(Origin origin) =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(s_study.Tube(0, 6, tube => tube with { Origin = origin })).Status
        );

    [Fact]
    public void The_second_specimen_of_a_subject_is_ineligible()
    {
        var pairs = s_study.Tubes(tube => tube with { Subject = "P1" }).Cell().Pairs;

        Assert.Equal(PairStatus.Compared, pairs[0].Status);
        Assert.Equal(PairStatus.Ineligible, pairs[1].Status);
    }

    [Fact]
    public void A_subject_code_in_other_letter_case_is_the_same_subject()
    {
        var pairs = s_study
            .Tubes(tube => tube with { Subject = tube.Specimen == "S000" ? "P1" : "p1" })
            .Cell()
            .Pairs;

        Assert.Equal(PairStatus.Ineligible, pairs[1].Status);
    }

    [Fact]
    public void A_second_specimen_stays_out_when_the_first_one_is_useless()
    {
        var pairs = s_study
            .Tubes(tube => tube with { Subject = "P1" })
            .Result(0, 0, "ERROR")
            .Cell()
            .Pairs;

        Assert.Equal(PairStatus.BaselineInvalid, pairs[0].Status);
        Assert.Equal(PairStatus.Ineligible, pairs[1].Status);
    }

    [Theory]
    [InlineData(30, PairStatus.Compared)]
    [InlineData(31, PairStatus.OutsideTiming)]
    [InlineData(-30, PairStatus.Compared)]
    [InlineData(-31, PairStatus.OutsideTiming)]
    public void The_tolerance_is_inclusive(int minutes, PairStatus expected)
    {
        var study = s_study
            .Row(0, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(minutes) })
            .Tube(0, 6, tube => tube with { SpunAt = tube.SpunAt?.AddMinutes(minutes) });

        Assert.Equal(expected, First(study).Status);
    }

    [Theory]
    [InlineData(60, PairStatus.Compared)]
    [InlineData(61, PairStatus.BaselineInvalid)]
    [InlineData(-1, PairStatus.BaselineInvalid)]
    public void A_baseline_is_tested_soon_after_collection(int minutes, PairStatus expected)
    {
        var collected = s_study.Inputs.Tubes[0].CollectedAt;
        var study = s_study
            .Row(0, 0, row => row with { TestedAt = collected.AddMinutes(minutes) })
            .Tube(0, 0, tube => tube with { SpunAt = null });

        Assert.Equal(expected, First(study).Status);
    }

    [Fact]
    public void A_baseline_without_a_time_is_invalid() =>
        Assert.Equal(
            PairStatus.BaselineInvalid,
            First(s_study.Row(0, 0, row => row with { TestedAt = null })).Status
        );

    [Fact]
    public void A_baseline_with_an_error_flag_is_invalid() =>
        Assert.Equal(
            PairStatus.BaselineInvalid,
            First(s_study.Row(0, 0, row => row with { Flag = "E7" })).Status
        );

    // A mark for a high result stands beside every baseline of patients with heparin.
    [Theory]
    [InlineData(FlagMeaning.Harmless)]
    [InlineData(FlagMeaning.ReportableWithNote)]
    public void A_flag_that_is_declared_not_to_be_a_failure_leaves_the_pair_as_it_is(
        FlagMeaning meaning
    )
    {
        var pair = First(
            s_study
                .Row(0, 0, row => row with { Flag = "H", FlagMeaning = meaning })
                .Row(0, 6, row => row with { Flag = "H", FlagMeaning = meaning })
        );

        Assert.Equal(PairStatus.Compared, pair.Status);
    }

    [Fact]
    public void A_delayed_result_without_a_time_is_outside_timing() =>
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(s_study.Row(0, 6, row => row with { TestedAt = null })).Status
        );

    [Fact]
    public void A_group_may_ask_for_early_spinning_of_the_baseline()
    {
        var study = s_study.Protocol(protocol =>
            protocol with
            {
                Groups =
                [
                    protocol.Groups[0] with
                    {
                        BaselineSpunWithin = TimeSpan.FromMinutes(15),
                    },
                ],
            }
        );

        Assert.Equal(PairStatus.Compared, First(study).Status);
        Assert.Equal(
            PairStatus.BaselineInvalid,
            First(
                study.Tube(0, 0, tube => tube with { SpunAt = tube.SpunAt?.AddMinutes(1) })
            ).Status
        );
        Assert.Equal(
            PairStatus.BaselineInvalid,
            First(study.Tube(0, 0, tube => tube with { SpunAt = null })).Status
        );
    }

    [Fact]
    public void A_delayed_tube_without_a_result_counts_whatever_the_stated_reason()
    {
        var pair = First(s_study.Result(0, 6, "QNS"));

        Assert.Equal(PairStatus.NoDelayedResult, pair.Status);
        Assert.True(pair.CountsForAgreement);
        Assert.False(pair.IsLeftOut);
    }

    [Fact]
    public void A_row_that_was_removed_counts_all_the_same()
    {
        var pair = First(s_study.WithoutRow(0, 6));

        Assert.Equal(PairStatus.NoDelayedResult, pair.Status);
        Assert.True(pair.CountsForAgreement);
    }

    [Fact]
    public void An_empty_result_without_a_time_counts_all_the_same() =>
        Assert.True(
            First(
                s_study.Result(0, 6, "NA").Row(0, 6, row => row with { TestedAt = null })
            ).CountsForAgreement
        );

    [Fact]
    public void A_number_beyond_the_measuring_interval_is_beyond_it() =>
        Assert.Equal(PairStatus.BeyondInterval, First(s_study.Result(0, 6, "180.1")).Status);

    [Fact]
    public void A_number_at_the_end_of_the_measuring_interval_is_compared() =>
        Assert.Equal(PairStatus.Compared, First(s_study.Result(0, 6, "180.0")).Status);

    [Fact]
    public void A_documented_exclusion_leaves_a_pair_out_with_its_reason()
    {
        var pair = First(s_study.Exclude(0, 6));

        Assert.Equal(PairStatus.Excluded, pair.Status);
        Assert.Equal("dropped (LS1, 2026-03-02)", pair.Reason);
    }

    [Fact]
    public void Eligibility_decides_before_timing() =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(
                s_study
                    .Tube(0, 6, tube => tube with { FillPercent = 50 })
                    .Row(0, 6, row => row with { TestedAt = row.TestedAt?.AddHours(3) })
            ).Status
        );

    [Fact]
    public void Timing_decides_before_the_baseline() =>
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(
                s_study
                    .Result(0, 0, "ERROR")
                    .Row(0, 6, row => row with { TestedAt = row.TestedAt?.AddHours(3) })
            ).Status
        );

    [Fact]
    public void The_baseline_decides_before_the_failed_tube() =>
        Assert.Equal(
            PairStatus.BaselineInvalid,
            First(s_study.Result(0, 0, "ERROR").Result(0, 6, "CLOT")).Status
        );

    [Fact]
    public void A_missing_delayed_result_decides_before_the_measuring_interval() =>
        Assert.Equal(
            PairStatus.NoDelayedResult,
            First(s_study.Result(0, 0, ">180").Result(0, 6, "NT")).Status
        );

    [Fact]
    public void A_specimen_of_another_group_is_not_in_the_cell() =>
        Assert.Equal(
            1,
            s_study
                .Tubes(tube => tube with { Group = tube.Specimen == "S000" ? "ufh" : "none" })
                .Cell()
                .Disposition.Received
        );
}
