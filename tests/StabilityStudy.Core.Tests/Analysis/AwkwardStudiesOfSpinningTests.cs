using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfSpinningTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "a tube tested twice",
            SmallStudy.Quiet(40, 6, 8).Row(3, 8, row => row with { Tube = "S003-6" }),
            "Supported, Supported",
            "outside-timing",
            "tube S003-6 was tested at more than one time"
        ),
        new(
            "every tube tested twice",
            SmallStudy
                .Quiet(40, 6, 8)
                .Rows(row =>
                    row with
                    {
                        Tube = row.Tube.Replace("-8", "-6", StringComparison.Ordinal),
                    }
                ),
            "Inconclusive, NotReached",
            "too-many-left-out",
            "40 of 40 specimens left out (100 %)"
        ),
        new(
            "one spun early",
            Quiet.Tube(3, 6, tube => tube with { SpunAt = tube.CollectedAt.AddMinutes(15) }),
            "Supported",
            "outside-timing",
            "it did not wait as whole blood"
        ),
        new(
            "all spun early",
            Quiet.Delayed(tube => tube with { SpunAt = tube.CollectedAt.AddMinutes(15) }),
            "Inconclusive",
            "too-many-left-out",
            "40 of 40"
        ),
        new(
            "spun exactly an hour before the test",
            Quiet.Delayed(tube => tube with { SpunAt = tube.CollectedAt.AddHours(5) }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "outside-timing",
        },
        new(
            "spinning not recorded",
            Quiet.Delayed(tube => tube with { SpunAt = null }),
            "Inconclusive",
            "outside-timing",
            "time of spinning not recorded"
        ),
        new(
            "spun after its test",
            Quiet.Tube(3, 6, tube => tube with { SpunAt = tube.CollectedAt.AddHours(7) }),
            "Supported",
            "outside-timing",
            "spun before its collection or after its test"
        ),
        new(
            "tubes of one draw collected at different times",
            Quiet.Tube(3, 6, tube => tube with { CollectedAt = tube.CollectedAt.AddHours(1) }),
            "Stop",
            "tubes-disagree",
            "S003"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
