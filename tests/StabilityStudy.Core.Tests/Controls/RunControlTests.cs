using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Controls;

public sealed class RunControlTests
{
    private static readonly SmallStudy s_study = SmallStudy
        .Quiet(40)
        .Protocol(protocol => protocol with { Controls = ControlRule.EveryRun });

    private static readonly ImmutableArray<ControlRow> s_controls =
    [
        .. s_study
            .Inputs.Results.Select(row => row.Run)
            .Distinct()
            .Select((run, i) => Row(i + 2, run, "C1", "30.0", ControlKind.Control)),
    ];

    private static ControlRow Row(
        int line,
        string run,
        string control,
        string result,
        ControlKind kind
    ) =>
        new(
            line,
            control,
            "aPTT",
            run,
            new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero),
            SmallRows.Reported(result),
            "s",
            30,
            28,
            32,
            kind
        );

    private static SmallStudy With(IEnumerable<ControlRow> controls) =>
        new(s_study.Inputs with { Controls = [.. controls] });

    private static SmallStudy FirstControl(Func<ControlRow, ControlRow> change) =>
        With(s_controls.SetItem(0, change(s_controls[0])));

    /// <summary>The pairs of one run are left out and the others decide.</summary>
    private static void LeavesOut(SmallStudy study, string code, int pairs = 4)
    {
        var cell = study.Cell();

        Assert.Equal(pairs, cell.Disposition.Count(PairStatus.RunNotInControl));
        Assert.Equal(40 - pairs, cell.Estimates.Compared);
        Assert.Empty(cell.Doubts);
        Assert.Equal(Conclusion.Supported, cell.Conclusion);
        if (code != "run-not-recorded")
        {
            Assert.Contains(
                study.Analyze().Queries,
                query => query.Code == code && query.Severity == Severity.Attention
            );
            Assert.Contains(StudyChecks.Of(study.Inputs, ""), query => query.Code == code);
        }
    }

    [Fact]
    public void With_every_run_in_control_the_criteria_decide()
    {
        var cell = With(s_controls).Cell();

        Assert.Equal(Conclusion.Supported, cell.Conclusion);
        Assert.Empty(cell.Doubts);
        Assert.Equal((20, 20), (cell.Controls!.Runs, cell.Controls.RunsInControl));
    }

    [Fact]
    public void A_run_whose_code_holds_the_word_between_two_replicates_is_one_run()
    {
        string Named(string run) => run + " and PM";
        var study = new SmallStudy(
            s_study.Rows(row => row with { Run = Named(row.Run) }).Inputs with
            {
                Controls = [.. s_controls.Select(row => row with { Run = Named(row.Run) })],
            }
        );

        Assert.Equal(Conclusion.Supported, study.Cell().Conclusion);
        Assert.Equal(
            Conclusion.NotAssessed,
            new SmallStudy(study.Inputs with { Controls = s_controls }).Cell().Conclusion
        );
    }

    [Fact]
    public void One_run_without_a_control_leaves_its_pairs_out() =>
        LeavesOut(With(s_controls.RemoveAt(0)), "run-without-control");

    [Fact]
    public void Without_any_control_nothing_is_assessed()
    {
        var cell = With([]).Cell();

        Assert.Equal(Conclusion.NotAssessed, cell.OwnConclusion);
        Assert.Equal(Conclusion.NotAssessed, cell.Conclusion);
        Assert.Equal(
            ["run-without-control", "too-few-days"],
            cell.Doubts.Select(doubt => doubt.Name())
        );
    }

    /// <summary>Ten days: with five out of control five remain, with six out four.</summary>
    [Theory]
    [InlineData(5, Conclusion.Supported)]
    [InlineData(6, Conclusion.NotAssessed)]
    public void So_many_runs_out_of_control_that_too_few_days_remain_leave_nothing_to_assess(
        int runs,
        Conclusion expected
    )
    {
        var baselines = s_controls
            .Where(row => row.Run.EndsWith("-0", StringComparison.Ordinal))
            .Take(runs)
            .ToImmutableArray();
        var study = With(
            s_controls.Select(row =>
                baselines.Contains(row) ? row with { Result = SmallRows.Reported("40.0") } : row
            )
        );
        var shares = study.Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 60 });

        Assert.Equal(expected, shares.Cell().Conclusion);
        Assert.Equal(4 * runs, shares.Cell().Disposition.Count(PairStatus.RunNotInControl));
    }

    [Theory]
    [InlineData("27.9", "control-out-of-range")]
    [InlineData("32.1", "control-out-of-range")]
    [InlineData(">180", "control-out-of-range")]
    [InlineData("NA", "run-without-control")]
    public void A_control_that_is_not_within_its_range_leaves_the_pairs_of_its_run_out(
        string result,
        string code
    ) => LeavesOut(FirstControl(row => row with { Result = SmallRows.Reported(result) }), code);

    [Theory]
    [InlineData("28.0")]
    [InlineData("32.0")]
    public void The_ends_of_the_range_belong_to_it(string result) =>
        Assert.Equal(
            Conclusion.Supported,
            FirstControl(row => row with { Result = SmallRows.Reported(result) }).Cell().Conclusion
        );

    [Fact]
    public void A_second_control_in_range_does_not_undo_one_outside() =>
        LeavesOut(
            With(s_controls.Add(Row(99, s_controls[0].Run, "C2", "40.0", ControlKind.Control))),
            "control-out-of-range"
        );

    [Fact]
    public void A_control_without_a_range_vouches_for_nothing() =>
        LeavesOut(FirstControl(row => row with { AllowedHigh = null }), "run-without-control");

    [Fact]
    public void A_control_of_another_analyte_vouches_for_nothing() =>
        LeavesOut(FirstControl(row => row with { Analyte = "PT" }), "run-without-control");

    [Fact]
    public void Bridging_plasma_is_no_control() =>
        LeavesOut(
            FirstControl(row => row with { Kind = ControlKind.BridgingPlasma }),
            "run-without-control"
        );

    [Fact]
    public void A_pair_in_an_unknown_run_is_left_out() =>
        LeavesOut(
            new SmallStudy(With(s_controls).Inputs).Row(3, 6, row => row with { Run = "" }),
            "run-not-recorded",
            pairs: 1
        );

    [Fact]
    public void Controls_kept_elsewhere_are_said_to_be_unchecked()
    {
        var analysis = SmallStudy.Quiet(40).Analyze();

        Assert.Null(analysis.Sequences[0].Cells[0].Controls);
        Assert.Equal(Conclusion.Supported, analysis.Sequences[0].Cells[0].Conclusion);
        Assert.Equal(
            Severity.Attention,
            Assert.Single(analysis.Queries, query => query.Code == "controls-not-checked").Severity
        );
    }

    [Theory]
    [InlineData("51.0", 2.0, false)]
    [InlineData("51.9", 3.8, true)]
    [InlineData("48.0", -4.0, true)]
    public void The_shift_of_bridging_plasma_is_shown(string delayed, double mean, bool told)
    {
        var bridging = s_controls.Select(
            (row, i) =>
                Row(
                    100 + i,
                    row.Run,
                    "B1",
                    row.Run.EndsWith("-0", StringComparison.Ordinal) ? "50.0" : delayed,
                    ControlKind.BridgingPlasma
                )
        );
        var study = With(s_controls.AddRange(bridging));

        var shift = study.Cell().Controls!.Bridging!;

        Assert.Equal((1, 10, 10), (shift.Plasmas, shift.BaselineResults, shift.DelayedResults));
        Assert.Equal(mean, shift.MeanPercent.Value!.Mean, 12);
        Assert.Equal(10, shift.MeanPercent.Value.Count);
        Assert.Equal(told, study.Analyze().Queries.Any(query => query.Code == "bridging-shift"));
    }

    [Fact]
    public void Plasma_tested_with_baselines_only_shows_no_shift()
    {
        var bridging = s_controls
            .Where(row => row.Run.EndsWith("-0", StringComparison.Ordinal))
            .Select((row, i) => Row(100 + i, row.Run, "B1", "50.0", ControlKind.BridgingPlasma));

        Assert.Null(With(s_controls.AddRange(bridging)).Cell().Controls!.Bridging);
    }
}
