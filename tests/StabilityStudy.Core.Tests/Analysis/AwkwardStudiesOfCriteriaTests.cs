using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Reclassification;
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
            "no specimen changes the side of a level that no baseline is near",
            Quiet.Criteria(Sides(60)),
            "Inconclusive",
            "level-outside-coverage",
            "60 s is outside what the baselines cover"
        ),
        new(
            "no specimen changes the side of a level among the baselines",
            Wide("+0").Criteria(Sides(50.5m)),
            "Supported",
            "changes-few",
            "at most 10 %"
        ),
        new(
            "half of the specimens change the side of a level",
            InTurn(40, "40.0", "38.0").Criteria(Sides(40)),
            "NotSupported",
            "changes-many",
            "more than 10 %"
        ),
        new(
            "two of 40 change the side of a level",
            InTurn(40, "40.0").First(2, 6, "38.0").Criteria(Sides(40)),
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
        new(
            "every change near the limit of each, and days that differ",
            ByDay("44.4", "45.9").Criteria(SmallProtocol.EachCriterion),
            "Inconclusive",
            "open-if-runs-moved",
            "20 of 40 would then be outside"
        ),
        new(
            "every change as near, and days that do not differ",
            InTurn(40, "44.4", "45.9", "45.9").Criteria(SmallProtocol.EachCriterion),
            "Supported",
            "share-shown",
            "85 %"
        ),
        new(
            "every change as near, and days that differ although each pair is in one run",
            ByDay("44.4", "45.9")
                .Rows(row => row with { Run = "R1" })
                .Protocol(protocol => protocol with { OneRunWithin = TimeSpan.FromHours(6) })
                .Criteria(SmallProtocol.EachCriterion),
            "Inconclusive",
            "open-if-runs-moved",
            "of the allowable difference"
        ),
        new(
            "days that differ far from the limit of each",
            ByDay("40.4", "41.9").Criteria(SmallProtocol.EachCriterion),
            "Supported",
            "share-shown",
            "85 %"
        ),
        new(
            "no specimen changes the side of a level, which a run could have done",
            ByDay("40.4", "41.9").Criteria(Sides(40.2m)),
            "NotSupported",
            "changes-many",
            "40.2 s"
        ),
        new(
            "all stay below a level that the runs could have moved them over",
            ByDay("34.0", "39.9").Criteria(Sides(41.3m)),
            "Inconclusive",
            "open-if-runs-moved",
            "the share that changes side would then be open"
        ),
        new(
            "all keep a class that the runs could have moved them out of",
            ByDay("38.4", "39.9").Criteria(Classes(0) with { Cutoffs = [20, 40.3m] }),
            "Inconclusive",
            "open-if-runs-moved",
            "the share that keeps its class would then be open"
        ),
        new(
            "a rule on the observed share alone is not moved",
            ByDay("44.4", "45.9")
                .Criteria(
                    SmallProtocol.EachCriterion with
                    {
                        SharePercentMinimum = 95,
                        Rule = DecisionRule.PointOnly,
                    }
                ),
            "Supported",
            "share-alone",
            "not controlled"
        ),
        new(
            "a decision level near the limit, and days that differ",
            WideByDay(0.045m, 0.085m).Criteria(Levels(50)),
            "Inconclusive",
            "interval-reaches-limit",
            "predicted at 50 s"
        ),
        new(
            "a decision level as near, and days that do not differ",
            WideByDay(0.065m, 0.065m).Criteria(Levels(50)),
            "Supported",
            "interval-inside",
            "predicted at 50 s lies inside"
        ),
        new(
            "a decision level beside changes skewed toward the limit, well inside it",
            Wide("+0").First(2, 6, "39.0").Criteria(Levels(50)),
            "Supported",
            "interval-inside",
            "predicted at 50 s lies inside"
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

    /// <summary>Baselines of 40.0 s, and one delayed result on the even days, another on the odd.</summary>
    private static SmallStudy ByDay(string even, string odd) => InTurn(40, even, odd);

    /// <summary>Baselines from 30 to 69 s that rise by one share on the even days and by another on the odd, and a little more.</summary>
    private static SmallStudy WideByDay(decimal even, decimal odd) =>
        SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    $"{30 + i}.0 | {SmallRows.Text((30 + i) * (1 + (i % 2 == 0 ? even : odd)) + (i % 3 - 1) * 0.1m)}"
                )
        );

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
