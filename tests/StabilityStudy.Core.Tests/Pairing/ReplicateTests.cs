using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class ReplicateTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of([6], ["30.0 | 36.0", "31.0 | 31.2"]);

    private static SmallStudy Rerun(int minutes, string result, int replicate = 2) =>
        s_study.Again(
            0,
            6,
            row =>
                row with
                {
                    Replicate = replicate,
                    Result = SmallRows.Reported(result),
                    TestedAt = row.TestedAt?.AddMinutes(minutes),
                }
        );

    private static string Delayed(SmallStudy study) => study.Cell().Pairs[0].Delayed!.Result.Text;

    [Fact]
    public void A_rerun_that_agrees_better_is_not_used_and_stays_listed()
    {
        var study = Rerun(5, "30.1");

        Assert.Equal("36.0", Delayed(study));
        Assert.Contains(
            study.Analyze().Queries,
            query => query is { Code: "repeat-result-not-used", Observed: "30.1" }
        );
    }

    [Fact]
    public void Numbering_a_rerun_as_the_first_replicate_does_not_make_it_first() =>
        Assert.Equal(
            "36.0",
            Delayed(
                Rerun(5, "30.1", replicate: 1)
                    .Row(0, 6, row => row with { Replicate = row.Result.Text == "36.0" ? 2 : 1 })
            )
        );

    [Fact]
    public void Leaving_out_the_time_of_the_first_result_does_not_make_the_rerun_first()
    {
        var study = Rerun(5, "30.1")
            .Row(0, 6, row => row.Result.Text == "36.0" ? row with { TestedAt = null } : row);

        Assert.Equal("36.0", Delayed(study));
        Assert.Equal(PairStatus.OutsideTiming, study.Cell().Pairs[0].Status);
    }

    [Fact]
    public void After_an_error_the_same_tube_may_be_tested_again() =>
        Assert.Equal(
            "30.1",
            Delayed(
                Rerun(5, "30.1")
                    .Row(0, 6, row => row.Result.Text == "36.0" ? row with { Flag = "E7" } : row)
            )
        );

    [Fact]
    public void A_tube_that_was_not_tested_leaves_the_place_to_another()
    {
        var study = SmallStudy.Of([6], ["30.0 | NT"]);
        var spare = study.Inputs.Tubes[1] with { Tube = "S000-spare" };
        study = new SmallStudy(study.Inputs with { Tubes = study.Inputs.Tubes.Add(spare) }).Again(
            0,
            6,
            row => row with { Tube = "S000-spare", Result = SmallRows.Reported("30.4") }
        );

        Assert.Equal(PairStatus.Compared, study.Cell().Pairs[0].Status);
    }

    [Fact]
    public void Two_planned_replicates_are_averaged()
    {
        var pair = Two(Rerun(5, "30.1")).Cell().Pairs[0];

        Assert.Equal(33.05m, pair.Values().Delayed);
        Assert.Equal("mean of 36.0 and 30.1", pair.Delayed!.Result.Text);
    }

    [Fact]
    public void A_second_replicate_tested_too_late_puts_the_pair_outside_timing() =>
        Assert.Equal(PairStatus.OutsideTiming, Two(Rerun(45, "30.1")).Cell().Pairs[0].Status);

    [Fact]
    public void A_mean_with_one_replicate_beyond_the_interval_lies_beyond_the_mean_of_the_ends() =>
        Assert.Equal(
            new CensoredResult("mean of 36.0 and 190.0", CensoredSide.Above, 108m),
            Two(Rerun(5, "190.0")).Cell().Pairs[0].Delayed!.Result
        );

    [Fact]
    public void One_replicate_of_two_is_used_and_noted()
    {
        var study = Two(s_study);

        Assert.Equal(PairStatus.Compared, study.Cell().Pairs[0].Status);
        Assert.Contains(
            study.Analyze().Queries,
            query => query.Code == "fewer-replicates-than-planned"
        );
    }

    private static SmallStudy Two(SmallStudy study) =>
        study.Protocol(protocol => protocol with { Replicates = 2 });
}
