using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Planning;

[Trait("lane", "slow")]
public sealed class CriterionSetCharacteristicTests
{
    private const int Studies = 800;

    private static readonly SupposedResults s_inOneRun = new(
        SupposedConduct.Even(40, 40),
        true,
        30,
        0.15,
        3,
        0,
        0
    );

    /// <summary>The two criteria together lie between p₁ + p₂ − 1 and the smaller of their exact powers.</summary>
    [Fact]
    public void Both_usual_criteria_lie_between_the_bounds_of_their_exact_powers()
    {
        double[] means = [-6, 0, 4, 5.5, 6.5, 7.5, 9];
        var curve = Curve(SmallProtocol.For(40, 6), s_inOneRun, means);

        foreach (var point in curve)
        {
            var mean = EquivalencePower.Of(40, point.Truth, 3, -7.5, 7.5, 0.90);
            var inside = Normal.Cdf((15 - point.Truth) / 3) - Normal.Cdf((-15 - point.Truth) / 3);
            var share = IndividualPower.Of(40, inside, 0.85, 0.95);
            Assert.True(point.Upper >= mean + share - 1 - 0.01, $"{point}");
            Assert.True(point.Lower <= Math.Min(mean, share) + 0.01, $"{point}");
        }
    }

    /// <summary>A simulation written beforehand in another language gave 0.69, 0.93 and 0.985 for a change of 6 %.</summary>
    [Theory]
    [InlineData(20, 0.69)]
    [InlineData(40, 0.93)]
    [InlineData(60, 0.985)]
    public void Agrees_with_an_independent_simulation(int specimens, double independent)
    {
        var point = Curve(
            SmallProtocol.For(specimens, 6),
            s_inOneRun with
            {
                Conduct = SupposedConduct.Even(specimens, specimens),
            },
            [6]
        )[0];

        // Bearing skewness costs a little that the independent one does not count.
        Assert.InRange(independent, point.Lower - 0.01, point.Upper + 0.02);
    }

    [Fact]
    public void Shared_runs_cost_power_and_days_bring_it_back()
    {
        var protocol = SmallProtocol.For(40, 6);
        var inRuns = s_inOneRun with
        {
            SameRun = false,
            RunSdPercent = 1.5,
            Conduct = SupposedConduct.Even(40, 5),
        };
        double[] means = [5];

        var five = Curve(protocol, inRuns, means)[0].Probability;
        var twenty = Curve(protocol, inRuns with { Conduct = SupposedConduct.Even(40, 20) }, means)[
            0
        ].Probability;
        var oneRun = Curve(protocol, s_inOneRun, means)[0].Probability;

        Assert.True(five < twenty && twenty < oneRun, $"{five}, {twenty}, {oneRun}");
    }

    [Fact]
    public void Fewer_days_than_required_support_nothing() =>
        Assert.Equal(
            0,
            Curve(
                SmallProtocol.For(40, 6),
                s_inOneRun with
                {
                    SameRun = false,
                    Conduct = SupposedConduct.Even(40, 4),
                },
                [0]
            )[0].Accepted
        );

    [Fact]
    public void Refuses_what_it_cannot_draw()
    {
        var protocol = SmallProtocol.For(40, 6);
        Assert.Throws<ArgumentException>(() => OfNames("PT", "none"));
        Assert.Throws<ArgumentException>(() => OfNames("aPTT", "heparin"));
        Assert.Throws<ArgumentException>(() => SupposedConduct.Even(40, 41));
        Assert.Throws<ArgumentException>(() => SupposedConduct.Even(0, 0));
        Assert.Throws<ArgumentException>(() =>
            Curve(protocol, s_inOneRun with { BaselineMedian = 0 }, [0])
        );
        Assert.Throws<ArgumentException>(() =>
            Curve(protocol, s_inOneRun with { SpecimenSdPercent = double.NaN }, [0])
        );

        void OfNames(string analyte, string group) =>
            CriterionSetCharacteristic.Curve(
                protocol,
                analyte,
                group,
                protocol.TimePoints[0],
                s_inOneRun,
                [0],
                1,
                1
            );
    }

    private static System.Collections.Immutable.ImmutableArray<CharacteristicPoint> Curve(
        StudyProtocol protocol,
        SupposedResults supposed,
        double[] means
    ) =>
        CriterionSetCharacteristic.Curve(
            protocol,
            "aPTT",
            "none",
            protocol.TimePoints[0],
            supposed,
            means,
            Studies,
            2026
        );
}
