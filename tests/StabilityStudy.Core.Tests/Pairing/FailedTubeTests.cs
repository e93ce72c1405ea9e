using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class FailedTubeTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of([6], ["30.0 | 30.5", "31.0 | 31.2"]);

    private static PairRecord First(SmallStudy study) => study.Cell().Pairs[0];

    [Theory]
    [InlineData("CLOT", "clot")]
    [InlineData("ERROR", "instrument error")]
    [InlineData("NA", "no reportable result")]
    public void A_delayed_tube_without_result_after_a_good_baseline_failed(
        string result,
        string reason
    )
    {
        var pair = First(s_study.Result(0, 6, result));

        Assert.Equal(PairStatus.Failed, pair.Status);
        Assert.Equal(reason, pair.Reason);
    }

    [Fact]
    public void An_error_flag_on_the_delayed_result_is_a_failure() =>
        Assert.Equal(
            PairStatus.Failed,
            First(s_study.Row(0, 6, row => row with { Flag = "E7" })).Status
        );

    [Fact]
    public void A_clot_seen_in_the_delayed_tube_is_a_failure_even_with_a_result() =>
        Assert.Equal(
            PairStatus.Failed,
            First(s_study.Tube(0, 6, tube => tube with { Clot = ClotCheck.Yes })).Status
        );

    [Fact]
    public void New_hemolysis_is_a_failure() =>
        Assert.Equal(
            PairStatus.Failed,
            First(s_study.Tube(0, 6, tube => tube with { Hemolysis = Hemolysis.Moderate })).Status
        );

    [Fact]
    public void Hemolysis_that_was_there_at_the_baseline_is_not_new() =>
        Assert.Equal(
            PairStatus.Compared,
            First(s_study.Tubes(tube => tube with { Hemolysis = Hemolysis.Moderate })).Status
        );

    [Theory]
    [InlineData(-180)]
    [InlineData(180)]
    public void A_failed_tube_cannot_be_moved_out_by_its_time(int minutes) =>
        Assert.Equal(
            PairStatus.Failed,
            First(
                s_study
                    .Result(0, 6, "CLOT")
                    .Row(0, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(minutes) })
            ).Status
        );

    [Fact]
    public void A_failed_tube_cannot_be_moved_out_by_leaving_its_spinning_unrecorded() =>
        Assert.Equal(
            PairStatus.Failed,
            First(
                s_study.Result(0, 6, "CLOT").Tube(0, 6, tube => tube with { SpunAt = null })
            ).Status
        );

    [Fact]
    public void A_failed_tube_cannot_be_moved_out_by_its_fill() =>
        Assert.Equal(
            PairStatus.Failed,
            First(
                s_study.Result(0, 6, "CLOT").Tube(0, 6, tube => tube with { FillPercent = 50 })
            ).Status
        );

    [Fact]
    public void A_failed_tube_cannot_be_moved_out_by_its_hematocrit() =>
        Assert.Equal(
            PairStatus.Failed,
            First(
                s_study
                    .Row(0, 6, row => row with { Flag = "E7" })
                    .Tube(0, 6, tube => tube with { HematocritPercent = 70 })
            ).Status
        );

    [Fact]
    public void A_failed_tube_of_a_short_baseline_tube_is_ineligible_with_its_draw() =>
        Assert.Equal(
            PairStatus.Ineligible,
            First(
                s_study.Result(0, 6, "CLOT").Tube(0, 0, tube => tube with { FillPercent = 50 })
            ).Status
        );

    [Fact]
    public void A_failed_tube_cannot_be_excluded()
    {
        var study = s_study.Result(0, 6, "CLOT").Exclude(0, 6);

        Assert.Equal(PairStatus.Failed, First(study).Status);
        Assert.Contains(study.Analyze().Queries, query => query.Code == "exclusion-of-failed-pair");
    }

    [Fact]
    public void A_clot_stands_although_the_tube_gave_a_result_when_tested_again() =>
        Assert.Equal(
            PairStatus.Failed,
            First(
                s_study
                    .Result(0, 6, "CLOT")
                    .Again(
                        0,
                        6,
                        row =>
                            row with
                            {
                                Result = SmallRows.Reported("30.1"),
                                TestedAt = row.TestedAt?.AddMinutes(5),
                            }
                    )
            ).Status
        );

    [Theory]
    [InlineData("ERROR", PairStatus.Compared)]
    [InlineData("QNS", PairStatus.Compared)]
    [InlineData("CLOT", PairStatus.Failed)]
    [InlineData("STORAGE", PairStatus.Failed)]
    [InlineData("45.0", PairStatus.Compared)]
    public void A_spare_tube_stands_for_one_without_a_result_but_not_for_one_that_failed(
        string first,
        PairStatus expected
    )
    {
        var pair = First(WithSpare(s_study.Result(0, 6, first)));

        Assert.Equal(expected, pair.Status);
        Assert.Equal(first is "ERROR" or "QNS", pair.Delayed?.Tube == "S000-spare");
    }

    [Fact]
    public void A_spare_tube_does_not_stand_for_a_hemolyzed_one()
    {
        var study = s_study
            .Result(0, 6, "QNS")
            .Tube(0, 6, tube => tube with { Hemolysis = Hemolysis.Gross });

        Assert.Equal(PairStatus.Failed, First(WithSpare(study)).Status);
    }

    private static SmallStudy WithSpare(SmallStudy study)
    {
        var spare = study.Inputs.Tubes.Single(tube => tube.Tube == "S000-6") with
        {
            Tube = "S000-spare",
            Hemolysis = Hemolysis.None,
        };
        return new SmallStudy(study.Inputs with { Tubes = study.Inputs.Tubes.Add(spare) }).Again(
            0,
            6,
            row =>
                row with
                {
                    Tube = "S000-spare",
                    Result = SmallRows.Reported("30.1"),
                    TestedAt = row.TestedAt?.AddMinutes(5),
                }
        );
    }
}
