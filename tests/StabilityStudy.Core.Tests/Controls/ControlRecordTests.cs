using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Controls;

/// <summary>Control results that can hardly vouch for their runs are told; those of an ordinary record are not.</summary>
public sealed class ControlRecordTests
{
    private static readonly string[] s_codes =
    [
        "run-too-long",
        "control-far-from-tests",
        "one-control-level",
        "control-in-some-runs",
        "control-of-two-kinds",
        "control-range-wide",
        "control-results-same",
        "cv-below-controls",
    ];

    private static readonly SmallStudy s_study = SmallStudy
        .Quiet(40)
        .Protocol(protocol => protocol with { Controls = ControlRule.EveryRun })
        .Analyte(analyte => analyte with { BetweenRunCvPercent = 2 });

    /// <summary>Two levels in every run, each tested when the first specimen of the run was, and varying as stated.</summary>
    private static readonly ImmutableArray<ControlRow> s_ordinary =
    [
        .. s_study
            .Inputs.Results.GroupBy(row => row.Run)
            .SelectMany(
                (run, i) =>
                    new[] { (Code: "C1", Target: 30m), (Code: "C2", Target: 60m) }.Select(
                        control => new ControlRow(
                            (2 * i) + (control.Code == "C1" ? 2 : 3),
                            control.Code,
                            "aPTT",
                            run.Key,
                            run.Min(row => row.TestedAt!.Value).AddMinutes(-5),
                            Reported(control.Target * (1 + ((i % 5) - 2) / 100m)),
                            "s",
                            control.Target,
                            0.94m * control.Target,
                            1.06m * control.Target,
                            ControlKind.Control
                        )
                    )
            ),
    ];

    [Fact]
    public void An_ordinary_record_is_silent() => Assert.Empty(Told(s_ordinary));

    [Fact]
    public void One_control_of_two_weeks_vouches_for_nothing()
    {
        var first = s_ordinary[0] with { Run = "R" };

        Assert.Equal(
            ["run-too-long", "control-far-from-tests", "one-control-level"],
            Told([first], study => study.Rows(row => row with { Run = "R" }))
        );
    }

    [Fact]
    public void A_control_of_the_morning_is_far_from_the_evening() =>
        Assert.Equal(
            ["control-far-from-tests"],
            Told([.. s_ordinary.Select(row => row with { TestedAt = row.TestedAt.AddHours(-9) })])
        );

    [Fact]
    public void A_level_that_is_missing_where_it_failed_is_told() =>
        Assert.Equal(
            ["one-control-level", "control-in-some-runs"],
            Told(s_ordinary.RemoveAll(row => row.Control == "C2" && row.Run.EndsWith('6')))
        );

    [Fact]
    public void A_level_without_a_result_in_some_runs_is_told() =>
        Assert.Equal(
            ["control-in-some-runs"],
            Told([
                .. s_ordinary.Select(row =>
                    row.Control == "C2" && row.Run.EndsWith('6')
                        ? row with
                        {
                            Result = SmallRows.Reported("NT"),
                        }
                        : row
                ),
            ])
        );

    [Fact]
    public void A_control_that_is_bridging_plasma_where_it_failed_is_told() =>
        Assert.Contains(
            "control-of-two-kinds",
            Told([
                .. s_ordinary.Select(row =>
                    row.Control == "C2" && row.Run.EndsWith('6')
                        ? row with
                        {
                            Kind = ControlKind.BridgingPlasma,
                        }
                        : row
                ),
            ])
        );

    [Fact]
    public void A_range_that_nothing_leaves_is_told() =>
        Assert.Equal(
            ["control-range-wide"],
            Told([.. s_ordinary.Select(row => row with { AllowedLow = 1, AllowedHigh = 900 })])
        );

    [Fact]
    public void The_same_result_every_time_is_told() =>
        Assert.Equal(
            ["control-results-same"],
            Told([.. s_ordinary.Select(row => row with { Result = Reported(row.Target!.Value) })])
        );

    [Fact]
    public void Controls_that_vary_more_than_the_stated_CV_are_told() =>
        Assert.Equal(
            ["cv-below-controls"],
            Told(
                s_ordinary,
                study => study.Analyte(analyte => analyte with { BetweenRunCvPercent = 0.2m })
            )
        );

    private static ImmutableArray<string> Told(
        ImmutableArray<ControlRow> controls,
        Func<SmallStudy, SmallStudy>? change = null
    )
    {
        var study = change is null ? s_study : change(s_study);
        return
        [
            .. StudyChecks
                .Of(study.Inputs with { Controls = controls }, "")
                .Where(query => query.Severity == Severity.Attention)
                .Select(query => query.Code)
                .Where(s_codes.Contains),
        ];
    }

    private static ReportedResult Reported(decimal value) =>
        SmallRows.Reported(value.ToString("0.0", CultureInfo.InvariantCulture));
}
