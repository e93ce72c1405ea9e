using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfResultsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "all identical",
            InTurn(40, "40.0"),
            "Inconclusive",
            "same-changes",
            "all changes are the same"
        ),
        new(
            "no change at any baseline",
            SmallStudy.Of([6], Enumerable.Range(0, 40).Select(i => $"{30 + i}.0 | {30 + i}.0")),
            "Inconclusive",
            "same-changes",
            "all changes are the same"
        ),
        new(
            "all beyond the limit both times",
            Quiet.First(40, 0, ">180").First(40, 6, ">180"),
            "Inconclusive",
            "too-few-measured",
            "too few pairs were measured both times"
        ),
        new(
            "one beyond the limit both times",
            Quiet.First(1, 0, ">180").First(1, 6, ">180"),
            "Supported",
            "beyond-measuring-interval",
            "not for means"
        ),
        new(
            "falls from beyond the limit",
            Quiet.First(3, 0, ">180"),
            "Inconclusive",
            "share-open",
            "85 %"
        )
        {
            Silent = "undecidable",
        },
        new(
            "rises a little to beyond the limit",
            Quiet.First(1, 0, "175.0").First(1, 6, ">180"),
            "Supported",
            "undecidable",
            "were they inside"
        ),
        new(
            "from below one limit to above the other",
            Quiet.First(3, 0, "<20").First(3, 6, ">180"),
            "Inconclusive",
            "share-open",
            "85 %"
        )
        {
            Silent = "undecidable",
        },
        new(
            "decimal slip upward",
            Quiet.First(1, 6, "332"),
            "Supported",
            "number-beyond-measuring-interval",
            "write >180"
        ),
        new(
            "decimal slip downward",
            Quiet.First(1, 6, "3.32"),
            "Supported",
            "number-beyond-measuring-interval",
            "write <20"
        ),
        new("three decimal slips", Quiet.First(3, 6, "332"), "Inconclusive", "share-open", "85 %"),
        new(
            "a result of zero",
            Quiet.Row(3, 6, row => row with { Result = new MeasuredResult("0", 0) }),
            "Stop",
            "result-not-positive",
            "0"
        ),
        new(
            "a baseline of zero",
            Quiet.Row(3, 0, row => row with { Result = new MeasuredResult("0", 0) }),
            "Stop",
            "result-not-positive",
            "0"
        ),
        new(
            "a negative result",
            Quiet.Row(3, 6, row => row with { Result = new MeasuredResult("-1", -1) }),
            "Stop",
            "result-not-positive",
            "0"
        ),
        new(
            "a second result that is not used",
            Quiet.Again(
                3,
                6,
                row =>
                    row with
                    {
                        TestedAt = row.TestedAt?.AddMinutes(5),
                        Result = SmallRows.Reported("60.0"),
                    }
            ),
            "Supported",
            "repeat-result-not-used",
            "the first valid result"
        ),
        new(
            "a rerun without a reason",
            Quiet
                .Row(3, 6, row => row with { Flag = "E7" })
                .Again(3, 6, row => row with { Flag = "", TestedAt = row.TestedAt?.AddMinutes(5) }),
            "Supported",
            "rerun-without-reason",
            "the failed test stands"
        ),
        new(
            "a rerun with a reason",
            Quiet
                .Row(3, 6, row => row with { Flag = "E7" })
                .Again(3, 6, row => row with { Flag = "", TestedAt = row.TestedAt?.AddMinutes(5) })
                .Rerun(3, 6),
            "Supported",
            "rerun",
            "The second result counts"
        )
        {
            Silent = "delayed-tube-failed",
        },
        new(
            "a rerun of a clot",
            Quiet
                .First(1, 6, "CLOT")
                .Again(
                    0,
                    6,
                    row =>
                        row with
                        {
                            Result = SmallRows.Reported("30.0"),
                            TestedAt = row.TestedAt?.AddMinutes(5),
                        }
                )
                .Rerun(0, 6),
            "Supported",
            "delayed-tube-failed",
            "clot"
        ),
        new(
            "a rerun for a reason that was not planned",
            Quiet.Rerun(3, 6, "looks odd"),
            "Supported",
            "rerun-reason-not-planned",
            "the first test stands"
        ),
        new("a rerun that was not", Quiet.Rerun(3, 6), "Supported", "rerun-without-effect", "S003"),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
