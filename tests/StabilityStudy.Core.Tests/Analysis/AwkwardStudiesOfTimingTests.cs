using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfTimingTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "late baseline",
            Quiet.Row(3, 0, row => row with { TestedAt = row.TestedAt?.AddHours(1) }),
            "Supported",
            "baseline-invalid",
            "after collection, 1 h allowed"
        ),
        new(
            "all baselines late",
            Quiet.Rows(row =>
                row.Occasion.IsBaseline ? row with { TestedAt = row.TestedAt?.AddMinutes(21) } : row
            ),
            "Inconclusive",
            "too-many-left-out",
            "40 of 40"
        ),
        new(
            "baseline at exactly one hour",
            Quiet.Rows(row =>
                row.Occasion.IsBaseline ? row with { TestedAt = row.TestedAt?.AddMinutes(20) } : row
            ),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "baseline-invalid",
        },
        new(
            "delayed tested before its baseline",
            Quiet
                .Row(3, 0, row => row with { TestedAt = row.TestedAt?.AddMinutes(340) })
                .Protocol(p => p with { BaselineWithin = TimeSpan.FromHours(7) }),
            "Supported",
            "outside-timing",
            "tested no later than its baseline"
        ),
        new(
            "delayed tested before collection",
            Quiet.Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddDays(-1) }),
            "Supported",
            "outside-timing",
            "tested before its collection"
        ),
        new(
            "baseline tested before collection",
            Quiet.Row(3, 0, row => row with { TestedAt = row.TestedAt?.AddDays(-1) }),
            "Supported",
            "baseline-invalid",
            "baseline tested before its collection"
        ),
        new(
            "time of a delayed test missing",
            Quiet.Row(3, 6, row => row with { TestedAt = null }),
            "Supported",
            "outside-timing",
            "time of the delayed test not recorded"
        ),
        new(
            "time of a baseline test missing",
            Quiet.Row(3, 0, row => row with { TestedAt = null }),
            "Supported",
            "baseline-invalid",
            "time of the baseline test not recorded"
        ),
        new(
            "31 minutes late",
            Quiet.Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(31) }),
            "Supported",
            "outside-timing",
            "tested 6 h 31 min after collection"
        ),
        new(
            "30 minutes late",
            Quiet.Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(30) }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "outside-timing",
            WindowHours = 6,
        },
        new(
            "one test ten minutes early shortens the window",
            Quiet.Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(-10) }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        )
        {
            WindowHours = 5.5,
        },
        new(
            "one test early with a step of an hour",
            Quiet
                .Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddMinutes(-10) })
                .Protocol(p => p with { WindowStep = TimeSpan.FromHours(1) }),
            "Supported",
            "modified-test",
            "5 h for aPTT"
        )
        {
            WindowHours = 5,
        },
        new(
            "a step of four hours",
            Quiet.Protocol(p => p with { WindowStep = TimeSpan.FromHours(4) }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        )
        {
            WindowHours = 4,
            Silent = "modified-test",
        },
        new(
            "heparin spun later than it may be",
            Quiet.Protocol(p =>
                p with
                {
                    Groups = [p.Groups[0] with { BaselineSpunWithin = TimeSpan.FromMinutes(10) }],
                }
            ),
            "Inconclusive",
            "baseline-invalid",
            "baseline tube spun 15 min after collection, 10 min allowed"
        ),
        new(
            "heparin of which spinning is not recorded",
            Quiet
                .Tube(3, 0, tube => tube with { SpunAt = null })
                .Protocol(p =>
                    p with
                    {
                        Groups =
                        [
                            p.Groups[0] with
                            {
                                BaselineSpunWithin = TimeSpan.FromMinutes(15),
                            },
                        ],
                    }
                ),
            "Supported",
            "baseline-invalid",
            "time of spinning the baseline tube not recorded"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
