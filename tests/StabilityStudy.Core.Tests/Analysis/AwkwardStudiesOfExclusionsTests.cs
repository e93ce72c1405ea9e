using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfExclusionsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "excluded after the fact",
            Excluded(5),
            "Supported",
            "exclusion-after-result",
            "when its result could be known"
        ),
        new(
            "a baseline without a partner excluded",
            Quiet.WithoutRow(3, 6).Exclude(3, 6),
            "Supported",
            "delayed-result-missing",
            "counts as outside the allowable difference"
        )
        {
            Silent = "pair-excluded",
        },
        new(
            "three of 40 excluded when their results could be known",
            ExcludedAt(null, Quiet.ExcludeFirst(3)),
            "Inconclusive",
            "undecidable",
            "3 of 40 specimens gave no result or cannot be decided"
        ),
        new(
            "nine of 40 excluded",
            Quiet.ExcludeFirst(9),
            "Inconclusive",
            "too-many-left-out",
            "9 of 40"
        ),
        new(
            "eight of 40 excluded",
            Quiet.ExcludeFirst(8),
            "Supported",
            "left-out-pairs-could-overturn",
            "it would not be supported"
        ),
        new(
            "two of 40 excluded",
            Quiet.ExcludeFirst(2),
            "Supported",
            "pair-excluded",
            "inside the limit each"
        )
        {
            Silent = "left-out-pairs-could-overturn",
        },
        new(
            "the three outside excluded",
            Quiet.First(3, 6, "45.0").ExcludeFirst(3),
            "Supported",
            "pair-excluded",
            "outside the limit each"
        ),
        new(
            "the three clotted excluded",
            Quiet.First(3, 6, "CLOT").ExcludeFirst(3),
            "Inconclusive",
            "exclusion-of-failed-pair",
            "S000"
        ),
        new(
            "an exclusion before collection",
            Excluded(-1),
            "Stop",
            "exclusion-before-collection",
            "before the specimen was collected"
        ),
        new(
            "an exclusion on the day of collection",
            ExcludedAt(null),
            "Supported",
            "exclusion-after-result",
            "was decided on the day of its result or later"
        ),
        new(
            "an exclusion on the day of collection, before the test",
            ExcludedAt(new TimeOnly(9, 30)),
            "Supported",
            "pair-excluded",
            "dropped"
        )
        {
            Silent = "exclusion-after-result",
        },
        new(
            "an exclusion on the day of collection, after the test",
            ExcludedAt(new TimeOnly(15, 0)),
            "Supported",
            "exclusion-after-result",
            "was decided when its result could be known"
        ),
        new(
            "an exclusion of a pair without a baseline",
            Quiet.Result(3, 0, "QNS").Exclude(3, 6),
            "Supported",
            "exclusion-not-needed",
            "S003"
        ),
        new(
            "an exclusion of a specimen that is not there",
            Quiet.Exclude(99, 6),
            "Supported",
            "exclusion-without-effect",
            "S099"
        ),
        new(
            "a specimen excluded at every time",
            SmallStudy.Quiet(40, 6, 8).Exclude(3, null),
            "Supported, Supported",
            "pair-excluded",
            "specimen S003 at 8 h"
        ),
        new(
            "more tested than excluded at one of two times",
            SmallStudy.Quiet(40, 6, 8).ExcludeFirst(9),
            "Inconclusive, NotReached",
            "too-many-left-out",
            "9 of 40"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);

    private static SmallStudy ExcludedAt(TimeOnly? time, SmallStudy? study = null)
    {
        var inputs = (study ?? Excluded(0)).Inputs;
        return new(
            inputs with
            {
                Facts = inputs.Facts with
                {
                    Exclusions =
                    [
                        .. inputs.Facts.Exclusions.Select(item => item with { Time = time }),
                    ],
                },
            }
        );
    }

    private static SmallStudy Excluded(int daysAfterCollection)
    {
        var study = Quiet.Exclude(3, 6);
        var facts = study.Inputs.Facts;
        return new(
            study.Inputs with
            {
                Facts = facts with
                {
                    Exclusions =
                    [
                        facts.Exclusions[0] with
                        {
                            On = facts.Exclusions[0].On.AddDays(daysAfterCollection),
                        },
                    ],
                },
            }
        );
    }
}
