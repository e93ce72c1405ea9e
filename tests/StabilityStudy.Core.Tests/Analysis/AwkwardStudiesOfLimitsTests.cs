using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfLimitsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "mean exactly at the limit",
            InTurn(40, "42.9", "43.1").Criteria(SmallProtocol.MeanCriterion),
            "Inconclusive",
            "interval-reaches-limit",
            "reaches beyond the allowable bias"
        ),
        new(
            "mean alone exactly at the limit",
            InTurn(40, "42.9", "43.1")
                .Criteria(SmallProtocol.MeanCriterion with { Rule = DecisionRule.PointOnly }),
            "Supported",
            "mean-alone",
            "is not controlled"
        ),
        new(
            "mean alone just beyond the limit",
            InTurn(40, "42.9", "43.1", "43.1")
                .Criteria(SmallProtocol.MeanCriterion with { Rule = DecisionRule.PointOnly }),
            "NotSupported",
            "mean-alone",
            "is not controlled"
        ),
        new(
            "the whole interval exactly at the limit",
            InTurn(40, "43.0"),
            "Inconclusive",
            "same-changes",
            "all changes are the same"
        ),
        new(
            "mean far beyond the limit",
            InTurn(40, "44.0", "44.2"),
            "NotSupported",
            "interval-outside",
            "wholly beyond the allowable bias"
        ),
        new(
            "mean far below the limit",
            InTurn(40, "36.0", "35.8"),
            "NotSupported",
            "interval-outside",
            "wholly beyond the allowable bias"
        ),
        new(
            "mean just inside and the interval too",
            InTurn(40, "42.8", "42.9"),
            "Supported",
            "interval-inside",
            "lies inside the allowable bias"
        ),
        new(
            "three exactly at the limit of each",
            InTurn(40, "40.0").First(3, 6, "46.0").Criteria(SmallProtocol.EachCriterion),
            "Supported",
            "share-shown",
            "85 %"
        ),
        new(
            "three one step beyond the limit of each",
            InTurn(40, "40.0").First(3, 6, "46.1").Criteria(SmallProtocol.EachCriterion),
            "Inconclusive",
            "share-open",
            "85 %"
        ),
        new(
            "three one step beyond it downward",
            InTurn(40, "40.0").First(3, 6, "33.9").Criteria(SmallProtocol.EachCriterion),
            "Inconclusive",
            "share-open",
            "85 %"
        ),
        new(
            "three at the greater of two parts",
            TwoParts("46.5"),
            "Supported",
            "share-shown",
            "85 %"
        ),
        new(
            "three beyond the greater of two parts",
            TwoParts("46.6"),
            "Inconclusive",
            "share-open",
            "85 %"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);

    /// <summary>The allowance is 6.5 s at 40.0 s, where 15 % are 6.0 s.</summary>
    private static SmallStudy TwoParts(string delayed) =>
        InTurn(40, "40.0")
            .First(3, 6, delayed)
            .Criteria(SmallProtocol.EachCriterion)
            .Protocol(protocol =>
                protocol with
                {
                    Limits = [new Limit("each", 15m, 6.5m, "invented")],
                }
            );
}
