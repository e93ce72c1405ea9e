using StabilityStudy.Core.Specimens;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfTubesTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "every delayed tube clotted",
            Quiet.First(40, 6, "CLOT"),
            "NotSupported",
            "share-refuted",
            "fewer than 85 %"
        ),
        new(
            "one clotted with short fill",
            Quiet.Tube(3, 6, tube => tube with { Clot = ClotCheck.Yes, FillPercent = 10 }),
            "Supported",
            "delayed-tube-failed",
            "clot"
        )
        {
            Silent = "specimen-ineligible",
        },
        new(
            "three clotted though they gave results",
            Quiet.Delayed(tube =>
                string.CompareOrdinal(tube.Specimen, "S003") < 0
                    ? tube with
                    {
                        Clot = ClotCheck.Yes,
                    }
                    : tube
            ),
            "Inconclusive",
            "share-open",
            "85 %"
        ),
        new(
            "three newly hemolyzed",
            Quiet.Delayed(tube =>
                string.CompareOrdinal(tube.Specimen, "S003") < 0
                    ? tube with
                    {
                        Hemolysis = Hemolysis.Moderate,
                    }
                    : tube
            ),
            "Inconclusive",
            "delayed-tube-failed",
            "new hemolysis"
        ),
        new(
            "hemolyzed from the start",
            Quiet.Tubes(tube => tube with { Hemolysis = Hemolysis.Moderate }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "delayed-tube-failed",
        },
        new(
            "clot in a baseline tube",
            Quiet.Tube(3, 0, tube => tube with { Clot = ClotCheck.Yes }),
            "Supported",
            "specimen-ineligible",
            "clot in baseline tube S003-0"
        ),
        new(
            "fill 85 on a delayed tube",
            Quiet.Tube(3, 6, tube => tube with { FillPercent = 85 }),
            "Supported",
            "specimen-ineligible",
            "filled to 85 % of nominal, at least 90 % required"
        ),
        new(
            "fill exactly 90",
            Quiet.Tubes(tube => tube with { FillPercent = 90 }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "specimen-ineligible",
        },
        new(
            "fill 85 on the tubes outside",
            Quiet
                .First(3, 6, "45.0")
                .Delayed(tube =>
                    string.CompareOrdinal(tube.Specimen, "S003") < 0
                        ? tube with
                        {
                            FillPercent = 85,
                        }
                        : tube
                ),
            "Supported",
            "left-out-pairs-could-overturn",
            "it would not be supported"
        ),
        new(
            "hematocrit 56",
            Quiet.Tube(3, 0, tube => tube with { HematocritPercent = 56 }),
            "Supported",
            "specimen-ineligible",
            "hematocrit 56 % is above 55 %"
        ),
        new(
            "hematocrit 55",
            Quiet.Tubes(tube => tube with { HematocritPercent = 55 }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "specimen-ineligible",
        },
        new(
            "all spiked",
            Quiet.Tubes(tube => tube with { Origin = Origin.Spiked }),
            "Inconclusive",
            "specimen-ineligible",
            "spiked or pooled material does not stand for"
        ),
        new(
            "one pooled",
            Quiet.Tubes(tube =>
                tube.Specimen == "S003" ? tube with { Origin = Origin.Pool } : tube
            ),
            "Supported",
            "specimen-ineligible",
            "spiked or pooled material does not stand for"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
