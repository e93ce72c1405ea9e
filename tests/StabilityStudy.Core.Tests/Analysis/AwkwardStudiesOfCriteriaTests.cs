using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfCriteriaTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "a decision level beyond every baseline",
            Quiet.Criteria(Levels(60)),
            "Inconclusive",
            "level-outside-coverage",
            "60 s is outside what the baselines cover"
        ),
        new(
            "a decision level with two baselines above it",
            Wide("+0").First(2, 0, "99.0").First(2, 6, "99.0").Criteria(Levels(98)),
            "Inconclusive",
            "level-outside-coverage",
            "98 s is outside what the baselines cover"
        ),
        new(
            "a decision level among the baselines",
            Wide("+0").Criteria(Levels(50)),
            "Supported",
            "interval-inside",
            "predicted at 50 s lies inside"
        ),
        new(
            "a decision level at which results rise by a fifth",
            Wide("+fifth").Criteria(Levels(50)),
            "NotSupported",
            "interval-outside",
            "predicted at 50 s lies wholly beyond"
        ),
        new(
            "no decision level",
            Quiet.Analyte(a => a with { DecisionLevels = [] }).Criteria(Levels()),
            "Inconclusive",
            "no-level",
            "states no decision level"
        ),
        new(
            "no specimen changes the side of a level",
            Quiet.Criteria(Sides(60)),
            "Supported",
            "changes-shown-few",
            "at most 10 %"
        ),
        new(
            "half of the specimens change the side of a level",
            InTurn(40, "40.0", "39.9").Criteria(Sides(40)),
            "NotSupported",
            "changes-shown-many",
            "more than 10 %"
        ),
        new(
            "two of 40 change the side of a level",
            InTurn(40, "40.0").First(2, 6, "39.9").Criteria(Sides(40)),
            "Inconclusive",
            "changes-open",
            "at most 10 %"
        ),
        new(
            "too few weak positives",
            Wide("+0").Criteria(Classes(10)),
            "Inconclusive",
            "too-few-weak-positives",
            "at least 10 required"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);

    private static DecisionLevelCriterion Levels(params ImmutableArray<decimal> levels) =>
        new("levels", [new("aPTT", "bias")], [], 0.90, levels);

    private static ReclassificationCriterion Sides(decimal level) =>
        new("sides", [new("aPTT", null)], [], 0.95, 10, [level]);

    private static ClassificationCriterion Classes(int weakPositives) =>
        new("classes", [new("aPTT", null)], [], 0.95, 85, [200], weakPositives);

    /// <summary>Baselines from 30 to 69 s that change little, or rise by a fifth and little more.</summary>
    private static SmallStudy Wide(string change) =>
        SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    $"{30 + i}.0 | {SmallRows.Text((30 + i) * (change == "+fifth" ? 1.2m : 1m) + (i % 3 - 1) * 0.1m)}"
                )
        );
}
