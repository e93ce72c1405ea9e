using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfScalesTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "one change skews the others, and the mean stays well inside",
            Quiet.Result(3, 6, "43.0"),
            "Supported",
            "interval-inside",
            "lies inside"
        ),
        new(
            "one change stands out",
            Quiet.Result(3, 6, "43.0"),
            "Supported",
            "outlier-flagged",
            "it stays in every figure"
        ),
        new(
            "skewed away from the nearer limit",
            InTurn(40, "42.0").Result(0, 6, "37.0").Result(1, 6, "41.9"),
            "Supported",
            "outlier-flagged",
            "it stays in every figure"
        )
        {
            Silent = "skewed",
        },
        new(
            "heavy tails on both sides",
            Quiet
                .First(2, 0, "30.0")
                .First(2, 6, "34.0")
                .Result(2, 0, "30.0")
                .Result(2, 6, "26.0")
                .Result(3, 0, "30.0")
                .Result(3, 6, "26.0"),
            "Supported",
            "outlier-flagged",
            "it stays in every figure"
        )
        {
            Silent = "skewed",
        },
        new(
            "results in whole seconds",
            InTurn(40, "40", "41", "39", "40").Analyte(a => a with { Decimals = 0 }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        ),
        new(
            "a tiny step",
            InTurn(40, "40.001", "40.000", "39.999").Analyte(a => a with { Decimals = 3 }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        )
        {
            Silent = "same-changes",
        },
        new(
            "changes far smaller than the imprecision",
            InTurn(40, "40.001", "40.000", "39.999")
                .Analyte(a => a with { Decimals = 3, BetweenRunCvPercent = 2.5m }),
            "Supported",
            "spread-below-noise",
            "far less than the 3.5 %"
        ),
        new(
            "log-ratio exactly doubled",
            InTurn(40, "79.9", "80.1")
                .Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.LogRatio }),
            "NotSupported",
            "interval-outside",
            "wholly beyond"
        ),
        new(
            "log-ratio quiet",
            Quiet.Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.LogRatio }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        ),
        new(
            "share of the allowance quiet",
            Quiet.Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.Share }),
            "Supported",
            "interval-inside",
            "inside the allowable bias"
        ),
        new(
            "share of the allowance, mean at the limit",
            InTurn(40, "42.9", "43.1")
                .Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.Share }),
            "Inconclusive",
            "interval-reaches-limit",
            "reaches beyond"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
