using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfMissingResultsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "all baselines without enough plasma",
            Quiet.First(40, 0, "QNS"),
            "Inconclusive",
            "baseline-invalid",
            "no baseline result"
        ),
        new(
            "error on a baseline",
            Quiet.First(1, 0, "ERROR"),
            "Supported",
            "baseline-invalid",
            "although the delayed tube has a result"
        ),
        new(
            "error flag on a baseline",
            Quiet.Row(3, 0, row => row with { Flag = "E7" }),
            "Supported",
            "baseline-invalid",
            "error flag E7 on the baseline"
        ),
        new(
            "error on a delayed tube",
            Quiet.First(1, 6, "ERROR"),
            "Supported",
            "delayed-tube-failed",
            "instrument error"
        ),
        new(
            "too little plasma in one delayed tube",
            Quiet.First(1, 6, "QNS"),
            "Supported",
            "no-delayed-result",
            "too little plasma"
        ),
        new(
            "tested without a reportable result",
            Quiet.First(1, 6, "NA"),
            "Supported",
            "delayed-tube-failed",
            "no reportable result"
        ),
        new(
            "one row missing",
            Quiet.WithoutRow(3, 6),
            "Supported",
            "delayed-result-missing",
            "neither a result nor a reason"
        ),
        new(
            "all delayed rows missing",
            SmallStudy.Of([6], Enumerable.Repeat("30.0 | -", 40)),
            "Inconclusive",
            "delayed-result-missing",
            "neither a result nor a reason"
        ),
        new(
            "all delayed not tested",
            Quiet.First(40, 6, "NT"),
            "Inconclusive",
            "undecidable",
            "40 of 40 specimens gave no result"
        ),
        new(
            "two delayed tubes of 40 lost, whatever the reason",
            Quiet.First(1, 6, "NT").Result(1, 6, "QNS"),
            "Supported",
            "undecidable",
            "2 of 40 specimens gave no result"
        ),
        new(
            "three delayed tubes of 40 lost",
            Quiet.First(3, 6, "NT"),
            "Inconclusive",
            "share-open",
            "leave open whether 85 %"
        ),
        new(
            "a storage failure",
            Quiet.First(1, 6, "STORAGE"),
            "Supported",
            "delayed-tube-failed",
            "storage failure"
        ),
        new(
            "exactly 20 percent left out",
            SmallStudy.Quiet(50).First(10, 0, "QNS"),
            "Supported",
            "left-out-pairs-could-overturn",
            "it would not be supported"
        )
        {
            Silent = "too-many-left-out",
        },
        new(
            "22 percent left out",
            SmallStudy.Quiet(50).First(11, 0, "QNS"),
            "Inconclusive",
            "too-many-left-out",
            "11 of 50 specimens left out (22 %), at most 20 % allowed"
        ),
        new(
            "21 percent left out",
            SmallStudy.Quiet(100).First(21, 0, "QNS"),
            "Inconclusive",
            "too-many-left-out",
            "21 of 100 specimens left out (21 %)"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
