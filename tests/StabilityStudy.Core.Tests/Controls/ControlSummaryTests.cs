using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Controls;

public sealed class ControlSummaryTests
{
    private static readonly SmallStudy s_study = SmallStudy
        .Quiet(40)
        .Protocol(protocol => protocol with { Controls = ControlRule.EveryRun });

    /// <summary>28, 30, 32: mean 30, SD 2, CV 6.67 %; 28 lies below 29 and 32 above 31.</summary>
    [Fact]
    public void Mean_SD_and_results_outside_are_those_of_a_calculation_by_hand()
    {
        var summary = Assert.Single(Of(Row("run-1", 28m), Row("run-1", 30m), Row("run-2", 32m)));

        Assert.Equal((3, 2, 2), (summary.Results, summary.Runs, summary.Outside));
        Assert.Equal(30, summary.Spread.Value!.Mean, 1e-12);
        Assert.Equal(2, summary.Spread.Value.StandardDeviation, 1e-12);
        Assert.Equal(20.0 / 3, summary.CvPercent!.Value, 1e-12);
        Assert.Equal((30m, 29m, 31m), (summary.Target, summary.AllowedLow, summary.AllowedHigh));
    }

    [Fact]
    public void A_range_that_changed_in_between_is_not_shown_as_one()
    {
        var summary = Assert.Single(
            Of(Row("run-1", 30m), Row("run-2", 30.2m) with { AllowedHigh = 32m, Target = null })
        );

        Assert.Equal((null, 29m, null), (summary.Target, summary.AllowedLow, summary.AllowedHigh));
        Assert.Null(summary.CvPercent);
    }

    [Fact]
    public void Controls_come_before_bridging_plasma_and_none_are_shown_that_are_kept_elsewhere()
    {
        var rows = new[]
        {
            Row("run-1", 38m) with
            {
                Control = "A",
                Kind = ControlKind.BridgingPlasma,
            },
            Row("run-1", 30m),
        };

        Assert.Equal(["C1", "A"], Of(rows).Select(summary => summary.Control));
        Assert.Empty(
            Of(
                s_study.Protocol(protocol =>
                    protocol with
                    {
                        Controls = ControlRule.KeptElsewhere,
                    }
                ),
                rows
            )
        );
    }

    private static ImmutableArray<ControlSummary> Of(params ControlRow[] rows) => Of(s_study, rows);

    private static ImmutableArray<ControlSummary> Of(SmallStudy study, ControlRow[] rows) =>
        StudyAnalyzer
            .Analyze(
                study.Inputs with
                {
                    Controls = [.. rows],
                },
                new StudyIdentity("", [], []),
                [],
                "0"
            )
            .Controls;

    private static ControlRow Row(string run, decimal result) =>
        new(
            2,
            "C1",
            "aPTT",
            run,
            new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero),
            SmallRows.Reported(result.ToString("0.0", CultureInfo.InvariantCulture)),
            "s",
            30m,
            29m,
            31m,
            ControlKind.Control
        );
}
