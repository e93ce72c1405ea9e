using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfSequencesTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "an early test at a later time point",
            SmallStudy
                .Quiet(40, 6, 8)
                .Row(3, 8, row => row with { TestedAt = row.TestedAt?.AddMinutes(-10) }),
            "Supported, Supported",
            "interval-inside",
            "inside the allowable bias"
        )
        {
            WindowHours = 7.5,
        },
        new(
            "the second time point fails",
            SmallStudy.Quiet(40, 6, 8).First(3, 8, "CLOT"),
            "Supported, Inconclusive",
            "share-open",
            "85 %"
        )
        {
            WindowHours = 6,
        },
        new(
            "the first time point fails and the second does not",
            SmallStudy.Quiet(40, 6, 8).First(3, 6, "CLOT"),
            "Inconclusive, NotReached",
            "share-open",
            "85 %"
        ),
        new(
            "the first is refuted and the second is quiet",
            SmallStudy.Quiet(40, 6, 8).First(20, 6, "CLOT"),
            "NotSupported, NotReached",
            "share-refuted",
            "85 %"
        ),
        new(
            "each specimen at one of two times",
            SmallStudy
                .Of(
                    [6, 8],
                    Enumerable
                        .Range(0, 80)
                        .Select(i =>
                            $"{30 + i % 7}.0 | {(i / 10 % 2 == 0 ? $"{30 + i % 7}.{i % 3} | -" : $"- | {30 + i % 7}.{i % 3}")}"
                        )
                )
                .Protocol(p => p with { DelaysPerSpecimen = 1 }),
            "Supported, Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "delayed-result-missing",
        },
        new(
            "the same without an incomplete design",
            SmallStudy.Of(
                [6, 8],
                Enumerable
                    .Range(0, 80)
                    .Select(i =>
                        $"{30 + i % 7}.0 | {(i / 10 % 2 == 0 ? $"{30 + i % 7}.{i % 3} | -" : $"- | {30 + i % 7}.{i % 3}")}"
                    )
            ),
            "Inconclusive, NotReached",
            "undecidable",
            "40 of 80 specimens gave no result or cannot be decided"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
