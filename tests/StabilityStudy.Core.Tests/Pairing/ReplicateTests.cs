using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
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

    private static readonly SmallStudy s_flagged = Rerun(5, "30.1")
        .Row(0, 6, row => row.Result.Text == "36.0" ? row with { Flag = "E7" } : row);

    [Fact]
    public void After_an_error_a_second_test_does_not_count_without_a_documented_reason()
    {
        Assert.Equal(PairStatus.Failed, s_flagged.Cell().Pairs[0].Status);
        Assert.Contains(
            s_flagged.Analyze().Queries,
            query =>
                query
                    is {
                        Code: "rerun-without-reason",
                        Severity: Severity.Attention,
                        Observed: "E7 36.0, then 30.1"
                    }
        );
    }

    [Fact]
    public void After_an_error_a_second_test_counts_with_a_documented_reason_and_is_told_of()
    {
        var study = s_flagged.Rerun(0, 6);

        Assert.Equal("30.1", Delayed(study));
        Assert.Equal(PairStatus.Compared, study.Cell().Pairs[0].Status);
        var query = Assert.Single(study.Analyze().Queries, query => query.Code == "rerun");
        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains(
            "instrument error (LS1, 2026-03-02)",
            query.Message,
            StringComparison.Ordinal
        );
        Assert.Equal("E7 36.0, then 30.1", query.Observed);
    }

    [Fact]
    public void A_reason_that_the_protocol_does_not_name_is_not_accepted()
    {
        var study = s_flagged.Rerun(0, 6, "looked odd");

        Assert.Equal(PairStatus.Failed, study.Cell().Pairs[0].Status);
        Assert.Contains(
            study.Analyze().Queries,
            query => query is { Code: "rerun-reason-not-planned", Severity: Severity.Attention }
        );
    }

    [Theory]
    [InlineData(null, PairStatus.Failed)]
    [InlineData(8, PairStatus.Failed)]
    [InlineData(6, PairStatus.Compared)]
    public void A_rerun_is_documented_for_one_time(int? hour, PairStatus expected) =>
        Assert.Equal(expected, s_flagged.Rerun(0, hour).Cell().Pairs[0].Status);

    [Fact]
    public void A_documented_rerun_never_replaces_a_valid_result() =>
        Assert.Equal("36.0", Delayed(Rerun(5, "30.1").Rerun(0, 6)));

    [Fact]
    public void A_documented_rerun_does_not_undo_a_clot() =>
        Assert.Equal(
            PairStatus.Failed,
            SmallStudy
                .Of([6], ["30.0 | CLOT", "31.0 | 31.2"])
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
                .Rerun(0, 6)
                .Cell()
                .Pairs[0]
                .Status
        );

    [Fact]
    public void A_baseline_repeated_after_an_error_is_invalid_without_a_documented_reason()
    {
        var study = SmallStudy
            .Of([6], ["ERROR | 30.5", "31.0 | 31.2"])
            .Again(
                0,
                0,
                row =>
                    row with
                    {
                        Result = SmallRows.Reported("30.1"),
                        TestedAt = row.TestedAt?.AddMinutes(5),
                    }
            );

        Assert.Equal(PairStatus.BaselineInvalid, study.Cell().Pairs[0].Status);
        Assert.Equal(PairStatus.Compared, study.Rerun(0, null).Cell().Pairs[0].Status);
    }

    [Fact]
    public void A_third_test_in_place_of_one_that_failed_of_two_needs_a_reason_too()
    {
        var study = Two(
            s_flagged
                .Row(0, 6, row => row with { Flag = row.Flag.Length > 0 ? "" : "E7" })
                .Row(0, 6, row => row with { Replicate = row.Flag.Length > 0 ? 2 : 1 })
        );
        var third = study.Inputs.Results.Single(row => row.Flag.Length > 0) with
        {
            SourceRow = 2000,
            Replicate = 3,
            Flag = "",
            Result = SmallRows.Reported("30.2"),
        };
        study = new SmallStudy(
            study.Inputs with
            {
                Results = study.Inputs.Results.Add(
                    third with
                    {
                        TestedAt = third.TestedAt?.AddMinutes(5),
                    }
                ),
            }
        );

        Assert.Equal("36.0", Delayed(study));
        Assert.Equal("mean of 36.0 and 30.2", Delayed(study.Rerun(0, 6)));
    }

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

    [Fact]
    public void A_rerun_that_came_too_late_leaves_the_failed_test_standing()
    {
        var study = SmallStudy
            .Quiet(40)
            .Row(0, 6, row => row with { Flag = "E" })
            .Again(
                0,
                6,
                row => row with { Flag = "", TestedAt = row.TestedAt + TimeSpan.FromMinutes(50) }
            )
            .Rerun(0, 6);

        var pair = study.Cell(6).Pairs[0];

        Assert.Equal(PairStatus.Failed, pair.Status);
        Assert.Contains("the rerun was tested", pair.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_person_spelled_in_two_letter_cases_is_one()
    {
        var study = SmallStudy
            .Quiet(19)
            .Protocol(protocol => protocol with { RepeatDraws = RepeatDraws.OneCluster })
            .Tubes(tube => tube.Specimen == "S011" ? tube with { Subject = "pS000" } : tube);

        Assert.Equal(Conclusion.Inconclusive, study.Cell(6).OwnConclusion);
    }
}
