using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Study;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Looks.ExtendedStudy;

namespace StabilityStudy.Core.Tests.Looks;

/// <summary>Who looks and then adds specimens, stops, or changes results can make support of any data; what was looked at decides.</summary>
public sealed class LookTests
{
    [Fact]
    public void Thirty_leave_the_share_open_and_fifty_planned_show_it()
    {
        Assert.Equal(Conclusion.Inconclusive, Thirty.Cell().Conclusion);
        Assert.Equal(Conclusion.Supported, Fifty.Cell().Conclusion);
    }

    [Fact]
    public void Specimens_beyond_the_planned_number_do_not_count_without_a_look_either()
    {
        var cell = Fifty.Planned(First).Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal(Added, cell.Disposition.Count(PairStatus.BeyondPlanned));
    }

    [Fact]
    public void Specimens_added_after_a_look_do_not_count_and_the_conclusion_says_so()
    {
        var cell = Fifty.Planned(First).LookedAt(Thirty, Look).Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal(First, cell.Estimates.Compared);
        Assert.Equal(Added, cell.Disposition.Count(PairStatus.AddedAfterLook));
        Assert.Equal([new AddedAfterLookReason(Look, Added)], cell.Doubts);
    }

    [Fact]
    public void A_larger_number_locked_after_the_look_changes_nothing()
    {
        var analysis = Fifty.Amended(Look.AddHours(1)).LookedAt(Thirty, Look).Analyze();
        var cell = analysis.Sequences[0].Cells[0];

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal([new AddedAfterLookReason(Look, Added)], cell.Doubts);
        Assert.Contains(analysis.Queries, query => query.Code == "specimens-added-after-look");
        Assert.Contains(analysis.Queries, query => query.Code == "data-looked-at");
        Assert.Contains(
            "amended 1 time after its first lock (criteria unchanged)",
            Assert.Single(analysis.Queries, query => query.Code == "protocol-amended").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_larger_number_locked_before_those_specimens_came_counts_when_nobody_looked() =>
        Assert.Equal(Conclusion.Supported, Fifty.Amended(Look).Cell().Conclusion);

    [Fact]
    public void A_larger_number_locked_after_those_specimens_came_does_not_count()
    {
        var cell = Fifty.Amended(Look.AddDays(60)).Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal(Added, cell.Disposition.Count(PairStatus.BeyondPlanned));
    }

    [Fact]
    public void An_extension_counts_where_two_looks_were_planned_before_the_first()
    {
        Assert.Equal(
            Conclusion.Supported,
            Fifty
                .Amended(Look.AddHours(1), firstLooks: 2, looks: 2)
                .LookedAt(Thirty.Planned(First, looks: 2), Look)
                .Cell()
                .Conclusion
        );
        Assert.Equal(
            Conclusion.Inconclusive,
            Fifty
                .Amended(Look.AddHours(1), firstLooks: 1, looks: 2)
                .LookedAt(Thirty, Look)
                .Cell()
                .Conclusion
        );
    }

    [Fact]
    public void A_second_extension_is_one_look_too_many()
    {
        var sixty = Fifty.Planned(First + Added, looks: 2);
        var cell = sixty
            .LookedAt(Thirty.Planned(First, looks: 2), Look)
            .LookedAt(Without(sixty, 45), Look.AddDays(20))
            .Cell();

        Assert.Equal(5, cell.Disposition.Count(PairStatus.AddedAfterLook));
        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
    }

    [Fact]
    public void Looking_again_at_the_same_specimens_gives_no_new_chance_and_costs_none()
    {
        var cell = Thirty.LookedAt(Thirty, Look).LookedAt(Thirty, Look.AddDays(1)).Cell();

        Assert.Empty(cell.Doubts);
        Assert.Equal(First, cell.Estimates.Compared);
    }

    [Fact]
    public void While_specimens_are_to_come_nothing_is_concluded()
    {
        var analysis = SmallStudy.Quiet(40).Collecting().Planned(60).Analyze();

        Assert.True(analysis.IsInterim);
        Assert.Equal(Conclusion.Inconclusive, analysis.Sequences[0].Cells[0].Conclusion);
        Assert.Equal(
            [new CollectionNotCompleteReason(40, 60)],
            analysis.Sequences[0].Cells[0].Doubts
        );
    }

    [Fact]
    public void A_specimen_without_a_valid_baseline_is_still_to_come()
    {
        var study = SmallStudy.Quiet(40).Collecting();

        Assert.False(study.Analyze().IsInterim);
        Assert.True(study.WithoutRow(0, 0).Analyze().IsInterim);
        Assert.False(study.WithoutRow(0, 6).Analyze().IsInterim);
    }

    [Fact]
    public void A_collection_that_ended_early_is_concluded_by_its_own_numbers()
    {
        var study = SmallStudy.Quiet(40).Planned(60);

        Assert.Equal(Conclusion.Supported, study.Cell().Conclusion);
        Assert.Equal(CollectionState.EndedEarly, study.Sequence().Collection.State);
    }

    [Fact]
    public void A_stated_end_does_not_count_when_a_specimen_was_collected_after_it()
    {
        var study = SmallStudy.Quiet(40).Planned(60);
        var contradicted = new SmallStudy(
            study.Inputs with
            {
                Facts = study.Inputs.Facts with
                {
                    EndedEarly = new EndedEarly("r", "LS1", new DateOnly(2026, 3, 5), 5),
                },
            }
        ).Analyze();

        Assert.True(contradicted.IsInterim);
        Assert.Contains(contradicted.Queries, query => query.Code == "ended-early-contradicted");
    }

    [Fact]
    public void Who_looked_before_the_end_was_stated_can_conclude_nothing()
    {
        var forty = SmallStudy.Quiet(40).Planned(60);
        var cell = forty.LookedAt(forty.Collecting(), Look).Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal([new StoppedAfterLookReason(Look, 40, 60)], cell.Doubts);
        Assert.Equal(Conclusion.Supported, forty.LookedAt(forty, Look).Cell().Conclusion);
    }

    [Fact]
    public void A_smaller_number_after_an_interim_look_does_not_make_the_collection_complete()
    {
        var forty = SmallStudy.Quiet(40).Collecting();
        var cell = forty.LookedAt(forty.Planned(60), Look).Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal([new StoppedAfterLookReason(Look, 40, 60)], cell.Doubts);
    }

    [Fact]
    public void Changed_and_newly_left_out_pairs_are_listed_with_both_conclusions()
    {
        var query = Assert.Single(
            Thirty.Result(5, 6, "36.0").Exclude(14, 6).LookedAt(Thirty, Look).Analyze().Queries,
            query => query.Code == "pairs-changed-after-look"
        );

        Assert.Contains("changed S005", query.Message, StringComparison.Ordinal);
        Assert.Contains("left out since S014", query.Message, StringComparison.Ordinal);
        Assert.Contains("inconclusive then", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Unchanged_pairs_are_not_listed() =>
        Assert.DoesNotContain(
            Thirty.LookedAt(Thirty, Look).Analyze().Queries,
            query => query.Code == "pairs-changed-after-look"
        );

    private static SmallStudy Without(SmallStudy study, int from) =>
        new(
            study.Inputs with
            {
                Tubes =
                [
                    .. study.Inputs.Tubes.Where(tube =>
                        string.CompareOrdinal(tube.Specimen, SmallRows.Code(from)) < 0
                    ),
                ],
                Results =
                [
                    .. study.Inputs.Results.Where(row =>
                        string.CompareOrdinal(row.Specimen, SmallRows.Code(from)) < 0
                    ),
                ],
            }
        );
}
