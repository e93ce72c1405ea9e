using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfNumbersTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "no specimen",
            SmallStudy.Of([6], []),
            "Inconclusive",
            "nothing-counted",
            "no specimen can be counted"
        ),
        new(
            "one pair",
            SmallStudy.Quiet(1),
            "Inconclusive",
            "share-open",
            "leave open whether 85 %"
        ),
        new("two pairs", SmallStudy.Quiet(2), "Inconclusive", "too-few-days", "2 collection days"),
        new("18 pairs, none outside", SmallStudy.Quiet(18), "Inconclusive", "share-open", "85 %"),
        new("19 pairs, none outside", SmallStudy.Quiet(19), "Supported", "share-shown", "85 %"),
        new("two of 40 failed", Quiet.First(2, 6, "CLOT"), "Supported", "share-shown", "85 %"),
        new("three of 40 failed", Quiet.First(3, 6, "CLOT"), "Inconclusive", "share-open", "85 %"),
        new("ten of 40 failed", Quiet.First(10, 6, "CLOT"), "Inconclusive", "share-open", "85 %"),
        new(
            "eleven of 40 failed",
            Quiet.First(11, 6, "CLOT"),
            "NotSupported",
            "share-refuted",
            "fewer than 85 %"
        ),
        new(
            "fewer specimens than planned",
            Quiet.Protocol(p => p with { Groups = [p.Groups[0] with { Specimens = 60 }] }),
            "Supported",
            "collection-ended-early",
            "40 specimens received, 40 with a valid baseline, 60 planned"
        ),
        new(
            "specimens still to come",
            Quiet
                .Collecting()
                .Protocol(p => p with { Groups = [p.Groups[0] with { Specimens = 60 }] }),
            "Inconclusive",
            "fewer-specimens-than-planned",
            "40 specimens received, 40 with a valid baseline, 60 planned"
        ),
        new(
            "more specimens than planned",
            Quiet.Protocol(p => p with { Groups = [p.Groups[0] with { Specimens = 39 }] }),
            "Supported",
            "more-specimens-than-planned",
            "40 specimens received, 40 with a valid baseline, 39 planned"
        ),
        new("one day", Quiet.OnDays(1), "Inconclusive", "too-few-days", "1 collection day"),
        new("four days", Quiet.OnDays(4), "Inconclusive", "too-few-days", "4 collection days"),
        new(
            "five days",
            Quiet.OnDays(5),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        )
        {
            Silent = "too-few-days",
        },
        new(
            "one day, one run hours apart",
            Quiet.OnDays(1).Rows(row => row with { Run = "A" }),
            "Inconclusive",
            "too-few-days",
            "1 collection day"
        ),
        new(
            "one day, one run close together",
            Quiet
                .OnDays(1)
                .Rows(row =>
                    row with
                    {
                        Run = "A",
                        TestedAt = row.Occasion.IsBaseline
                            ? row.TestedAt?.AddMinutes(300)
                            : row.TestedAt,
                    }
                )
                .Protocol(p => p with { BaselineWithin = TimeSpan.FromHours(5.9) }),
            "Inconclusive",
            "too-few-days",
            "1 collection day"
        ),
        new(
            "one subject twice",
            Quiet.Tubes(tube => tube.Specimen == "S011" ? tube with { Subject = "PS000" } : tube),
            "Supported",
            "specimen-ineligible",
            "subject PS000 is already in this group"
        ),
        new(
            "one subject throughout",
            Quiet.Tubes(tube => tube with { Subject = "P" }),
            "Inconclusive",
            "too-many-left-out",
            "39 of 40 specimens left out (97.5 %)"
        ),
        new(
            "one subject throughout as one cluster",
            Quiet
                .Tubes(tube => tube with { Subject = "P" })
                .Protocol(p => p with { RepeatDraws = RepeatDraws.OneCluster }),
            "Inconclusive",
            "share-open",
            "85 %"
        ),
        new(
            "one subject in two groups",
            Quiet
                .Protocol(p =>
                    p with
                    {
                        Groups =
                        [
                            p.Groups[0] with
                            {
                                Specimens = 20,
                            },
                            p.Groups[0] with
                            {
                                Id = "vka",
                                Specimens = 20,
                            },
                        ],
                    }
                )
                .Tubes(tube =>
                    string.CompareOrdinal(tube.Specimen, "S020") < 0
                        ? tube
                        : tube with
                        {
                            Group = "vka",
                            Subject = tube.Specimen == "S020" ? "PS000" : tube.Subject,
                        }
                ),
            "Supported, Supported",
            "subject-in-two-groups",
            "PS000"
        ),
        new("18 persons, one of them twice", Repeated(), "Inconclusive", "share-open", "85 %"),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);

    /// <summary>Repeat draws count as one cluster.</summary>
    private static SmallStudy Repeated() =>
        SmallStudy
            .Quiet(19)
            .Tubes(tube => tube.Specimen == "S011" ? tube with { Subject = "PS000" } : tube)
            .Protocol(p => p with { RepeatDraws = RepeatDraws.OneCluster });
}
