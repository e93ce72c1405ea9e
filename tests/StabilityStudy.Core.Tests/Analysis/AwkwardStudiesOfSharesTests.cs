using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

[Trait("lane", "slow")]
public sealed class AwkwardStudiesOfSharesTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "no criterion",
            Quiet.Criteria(),
            "NotAssessed",
            "controls-not-checked",
            "kept elsewhere"
        )
        {
            Silent = "modified-test",
        },
        new(
            "the mean alone",
            Quiet.Criteria(SmallProtocol.MeanCriterion),
            "Supported",
            "supported-by-mean-only",
            "single patients' results move"
        ),
        new(
            "the mean alone with a failed tube",
            Quiet.First(1, 6, "CLOT").Criteria(SmallProtocol.MeanCriterion),
            "Inconclusive",
            "uncounted-pairs",
            "no individual criterion counts"
        ),
        new(
            "single specimens alone",
            Quiet.Criteria(SmallProtocol.EachCriterion),
            "Supported",
            "supported-by-individual-only",
            "a small shift of every result"
        ),
        new(
            "95 percent of 40",
            Quiet.Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 95 }),
            "Inconclusive",
            "share-open",
            "95 %"
        ),
        new(
            "95 percent of 58",
            SmallStudy
                .Quiet(58)
                .Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 95 }),
            "Inconclusive",
            "share-open",
            "95 %"
        ),
        new(
            "95 percent of 59",
            SmallStudy
                .Quiet(59)
                .Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 95 }),
            "Supported",
            "share-shown",
            "95 %"
        ),
        new(
            "90 percent of 46 with one outside",
            SmallStudy
                .Quiet(46)
                .First(1, 6, "CLOT")
                .Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 90 }),
            "Supported",
            "share-shown",
            "90 %"
        ),
        new(
            "90 percent of 45 with one outside",
            SmallStudy
                .Quiet(45)
                .First(1, 6, "CLOT")
                .Criteria(SmallProtocol.EachCriterion with { SharePercentMinimum = 90 }),
            "Inconclusive",
            "share-open",
            "90 %"
        ),
        new(
            "the observed share exactly as required",
            Quiet
                .First(6, 6, "CLOT")
                .Criteria(
                    SmallProtocol.MeanCriterion,
                    SmallProtocol.EachCriterion with
                    {
                        Rule = DecisionRule.PointOnly,
                    }
                ),
            "Supported",
            "share-alone",
            "is not controlled"
        ),
        new(
            "the observed share one short",
            Quiet
                .First(7, 6, "CLOT")
                .Criteria(
                    SmallProtocol.MeanCriterion,
                    SmallProtocol.EachCriterion with
                    {
                        Rule = DecisionRule.PointOnly,
                    }
                ),
            "NotSupported",
            "share-alone",
            "is not controlled"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
