using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Looks.ExtendedStudy;

namespace StabilityStudy.Core.Tests.Looks;

/// <summary>
/// How often a share that is exactly the required one is called shown, when thirty specimens that leave it open are
/// extended by twenty. Exact for thirty: at most one outside, 0.048; with the fifty counted as well 0.079.
/// </summary>
[Trait("lane", "slow")]
public sealed class LookErrorTests
{
    private const int Studies = 120;
    private const double Inside = 0.85;
    private const int Seed = 20261129;

    [Fact]
    public void An_extension_after_an_inconclusive_look_adds_no_false_support()
    {
        var random = new Random(Seed);
        var (first, counted, uncounted) = (0, 0, 0);
        for (var i = 0; i < Studies; i++)
        {
            var fifty = Drawn(random);
            var thirty = Only(fifty, First).Planned(First);
            if (thirty.Cell().Conclusion == Conclusion.Supported)
            {
                first++;
                continue;
            }

            counted += IsSupported(fifty.Planned(First + Added)) ? 1 : 0;
            uncounted += IsSupported(fifty.Amended(Look.AddHours(1)).LookedAt(thirty, Look))
                ? 1
                : 0;
        }

        var margin = 2 * Math.Sqrt(0.05 * 0.95 / Studies);
        Assert.Equal(0, uncounted);
        Assert.InRange((double)first / Studies, 0.048 - margin, 0.05 + margin);
        Assert.InRange((double)(first + counted) / Studies, 0.055, 1);
    }

    private static bool IsSupported(SmallStudy study) =>
        study.Cell().Conclusion == Conclusion.Supported;

    private static SmallStudy Drawn(Random random) =>
        SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, First + Added)
                    .Select(_ => random.NextDouble() < Inside ? "30.0 | 31.0" : "30.0 | 45.0")
            )
            .Criteria(SmallProtocol.EachCriterion)
            .Collecting()
            .Later(First, days: 30);

    private static SmallStudy Only(SmallStudy study, int specimens) =>
        new(
            study.Inputs with
            {
                Tubes =
                [
                    .. study.Inputs.Tubes.Where(tube =>
                        string.CompareOrdinal(tube.Specimen, SmallRows.Code(specimens)) < 0
                    ),
                ],
                Results =
                [
                    .. study.Inputs.Results.Where(row =>
                        string.CompareOrdinal(row.Specimen, SmallRows.Code(specimens)) < 0
                    ),
                ],
            }
        );
}
