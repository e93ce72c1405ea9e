using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class QueryTests
{
    private static readonly SmallStudy s_study = SmallStudy.Quiet(40);

    private static DataQuery[] Of(SmallStudy study, string code) =>
        [.. study.Analyze().Queries.Where(query => query.Code == code)];

    [Fact]
    public void A_study_in_which_all_is_well_says_only_what_it_did_not_look_at() =>
        Assert.Equal(
            [
                "modified-test",
                "level-not-reached",
                "times-as-planned",
                "controls-not-checked",
                "calibration-not-bridged",
            ],
            s_study.Analyze().Queries.Select(query => query.Code)
        );

    [Fact]
    public void Tubes_of_one_specimen_that_disagree_stop()
    {
        var study = s_study
            .Tube(0, 6, tube => tube with { Subject = "P9" })
            .Tube(1, 6, tube => tube with { Group = "ufh" })
            .Tube(2, 6, tube => tube with { CollectedAt = tube.CollectedAt.AddMinutes(1) });

        var queries = InputQueries.Of(study.Inputs);

        Assert.Equal(
            ["subject", "group", "collected_at"],
            queries.Select(query => query.Source.Column)
        );
        Assert.All(queries, query => Assert.Equal(Severity.Stop, query.Severity));
        Assert.Throws<ArgumentException>(study.Analyze);
    }

    [Fact]
    public void A_failed_tube_is_on_the_first_page() =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(s_study.Result(0, 6, "CLOT"), "delayed-tube-failed")).Severity
        );

    [Fact]
    public void A_missing_row_is_on_the_first_page() =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(s_study.WithoutRow(0, 6), "delayed-result-missing")).Severity
        );

    [Fact]
    public void An_exclusion_is_on_the_first_page() =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(s_study.Exclude(0, 6), "pair-excluded")).Severity
        );

    [Fact]
    public void An_exclusion_of_an_unknown_specimen_is_on_the_first_page() =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(s_study.Exclude(99, null), "exclusion-without-effect")).Severity
        );

    [Fact]
    public void An_exclusion_of_what_is_left_out_already_is_noted() =>
        Assert.Equal(
            Severity.Note,
            Assert
                .Single(Of(s_study.Result(0, 0, "ERROR").Exclude(0, null), "exclusion-not-needed"))
                .Severity
        );

    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public void Pairs_left_out_that_could_overturn_the_conclusion_are_named(
        int excluded,
        bool expected
    )
    {
        var study = SmallStudy.Quiet(43);
        for (var i = 0; i < excluded; i++)
        {
            study = study.Exclude(i, 6);
        }

        Assert.Equal(expected, Of(study, "left-out-pairs-could-overturn").Length == 1);
    }

    [Fact]
    public void Another_lot_within_a_pair_is_on_the_first_page()
    {
        var query = Assert.Single(
            Of(s_study.Row(3, 6, row => row with { Lot = "R2" }), "lot-differs-within-pair")
        );

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains("in 1 of 40 pairs", query.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(41, "collection-ended-early")]
    [InlineData(39, "more-specimens-than-planned")]
    public void Another_number_of_specimens_than_planned_is_on_the_first_page(
        int planned,
        string code
    )
    {
        var study = s_study.Protocol(protocol =>
            protocol with
            {
                Groups = [protocol.Groups[0] with { Specimens = planned }],
            }
        );

        Assert.Equal(Severity.Attention, Assert.Single(Of(study, code)).Severity);
    }

    [Fact]
    public void What_was_not_recorded_is_asked_for()
    {
        var study = s_study
            .Tube(0, 6, tube => tube with { FillPercent = null })
            .Row(0, 6, row => row with { Instrument = "", Lot = "" });

        Assert.Single(Of(study, "fill-not-recorded"));
        Assert.Single(Of(study, "instrument-not-recorded"));
        Assert.Single(Of(study, "lot-not-recorded"));
    }

    [Fact]
    public void What_a_rule_looks_at_and_was_not_recorded_is_asked_for()
    {
        var study = s_study.Tubes(tube =>
            tube with
            {
                HematocritPercent = null,
                Clot = Specimens.ClotCheck.NotRecorded,
                Hemolysis = Specimens.Hemolysis.NotRecorded,
            }
        );
        var without = study.Protocol(protocol =>
            protocol with
            {
                Eligibility = protocol.Eligibility with
                {
                    HematocritPercentMaximum = null,
                    RejectClot = false,
                },
            }
        );

        Assert.Single(Of(study, "hematocrit-not-recorded"));
        Assert.Single(Of(study, "clot-not-recorded"));
        Assert.Single(Of(study, "hemolysis-not-recorded"));
        Assert.Empty(Of(without, "hematocrit-not-recorded"));
        Assert.Empty(Of(without, "clot-not-recorded"));
    }

    [Fact]
    public void A_hematocrit_recorded_for_one_tube_is_that_of_its_draw()
    {
        var study = s_study.Tubes(tube =>
            tube with
            {
                HematocritPercent = tube.Tube.EndsWith("-6", StringComparison.Ordinal) ? 60 : null,
            }
        );

        Assert.Empty(Of(study, "hematocrit-not-recorded"));
        Assert.All(
            study.Cell().Pairs,
            pair =>
            {
                Assert.Equal(Core.Pairing.PairStatus.Ineligible, pair.Status);
                Assert.False(pair.IsOfDelayedTube);
            }
        );
    }

    [Fact]
    public void Times_of_spinning_that_decide_are_asked_for_once()
    {
        var study = s_study.Tubes(tube => tube with { SpunAt = null });

        var query = Assert.Single(Of(study, "spun-not-recorded"));

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Equal(3, query.Source.Line);
        Assert.Contains("for 40 tubes", query.Message, StringComparison.Ordinal);
        Assert.Single(Of(study, "outside-timing"));
    }

    [Fact]
    public void A_flagged_outlier_stays_in_every_figure()
    {
        var study = s_study.Result(3, 6, "43.0");
        var cell = study.Cell();

        Assert.True(cell.Pairs[3].IsOutlier);
        Assert.Equal(40, cell.Estimates.Compared);
        Assert.Single(Of(study, "outlier-flagged"));
    }
}
