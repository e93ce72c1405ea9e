using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfControlsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "controls kept elsewhere",
            Quiet,
            "Supported",
            "controls-not-checked",
            "Check that every run of this study was in control"
        ),
        new(
            "no control at all",
            Controlled(_ => null),
            "NotAssessed",
            "run-without-control",
            "runs without a control within its range"
        ),
        new(
            "every control within its range",
            Controlled(_ => "30.0"),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "run-without-control",
        },
        new(
            "one run without a control",
            Controlled(run => run == "2026-03-04-6" ? null : "30.0"),
            "Supported",
            "run-without-control",
            "2026-03-04-6"
        ),
        new(
            "one control out of range",
            Controlled(run => run == "2026-03-04-6" ? "40.0" : "30.0"),
            "Supported",
            "control-out-of-range",
            "2026-03-04-6"
        ),
        new(
            "controls exactly at the end of their range",
            Controlled(_ => "33.0"),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "control-out-of-range",
        },
        new(
            "controls one step beyond their range",
            Controlled(_ => "33.1"),
            "NotAssessed",
            "control-out-of-range",
            "runs with a control outside its range"
        ),
        new(
            "a run not recorded",
            Controlled(_ => "30.0").Row(3, 6, row => row with { Run = "" }),
            "Supported",
            "run-not-recorded",
            "run"
        ),
        new(
            "bridging plasma shifts by half of the allowance and more",
            Bridged("31.2"),
            "Supported",
            "bridging-shift",
            "more than half of the allowable bias"
        ),
        new("bridging plasma shifts by less", Bridged("31.1"), "Supported", "share-shown", "85 %")
        {
            Silent = "bridging-shift",
        },
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);

    /// <summary>A control from 27.0 to 33.0 in each run that is given a result.</summary>
    private static SmallStudy Controlled(Func<string, string?> resultOf) =>
        With(
            (run, testedAt) =>
                resultOf(run) is { } text ? Row(run, testedAt, text, ControlKind.Control) : []
        );

    /// <summary>A bridging plasma of 30.0 in baseline runs, beside controls within their range.</summary>
    private static SmallStudy Bridged(string delayed) =>
        With(
            (run, testedAt) =>
                [
                    .. Row(run, testedAt, "30.0", ControlKind.Control),
                    .. Row(
                        run,
                        testedAt,
                        run.EndsWith("-0", StringComparison.Ordinal) ? "30.0" : delayed,
                        ControlKind.BridgingPlasma
                    ),
                ]
        );

    private static SmallStudy With(
        Func<string, DateTimeOffset, ImmutableArray<ControlRow>> rowsOf
    ) =>
        new SmallStudy(
            Quiet.Inputs with
            {
                Controls =
                [
                    .. Quiet
                        .Inputs.Results.DistinctBy(row => row.Run)
                        .SelectMany(row => rowsOf(row.Run, row.TestedAt!.Value)),
                ],
            }
        ).Protocol(protocol => protocol with { Controls = ControlRule.EveryRun });

    private static ImmutableArray<ControlRow> Row(
        string run,
        DateTimeOffset testedAt,
        string text,
        ControlKind kind
    ) =>
        [
            new(
                2,
                kind == ControlKind.Control ? "C1" : "B1",
                "aPTT",
                run,
                testedAt,
                SmallRows.Reported(text),
                "s",
                30m,
                kind == ControlKind.Control ? 27m : null,
                kind == ControlKind.Control ? 33m : null,
                kind
            ),
        ];
}
