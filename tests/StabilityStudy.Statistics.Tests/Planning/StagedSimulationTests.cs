using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class StagedSimulationTests
{
    private static readonly StudyNumber s_all = new(4000, 0);

    /// <summary>The rate of an event of known probability, within three of its standard errors.</summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(0.9)]
    public void Rates_are_those_of_the_events(double probability)
    {
        var rates = StagedSimulation.Rates(
            7,
            3,
            s_all,
            5,
            0.95,
            random => (random.NextDouble() < probability ? 1UL : 0) | 4
        );

        Assert.InRange(
            rates[0].Probability,
            probability - (3 * Math.Sqrt(probability * (1 - probability) / 4000)),
            probability + (3 * Math.Sqrt(probability * (1 - probability) / 4000))
        );
        Assert.Equal((0, 4000), (rates[1].Accepted, rates[2].Accepted));
        Assert.All(rates, rate => Assert.Equal((7, 4000), (rate.Truth, rate.Studies)));
    }

    [Fact]
    public void A_rate_near_the_ends_takes_fewer_studies_and_stays_within_the_tolerance()
    {
        var number = new StudyNumber(4000, 0.03);
        CharacteristicPoint At(double probability) =>
            StagedSimulation.Rates(
                0,
                1,
                number,
                5,
                0.95,
                random => random.NextDouble() < probability ? 1UL : 0
            )[0];

        Assert.Equal(StagedSimulation.FirstStage, At(0).Studies);
        Assert.Equal(StagedSimulation.FirstStage, At(1).Studies);
        Assert.True(At(0.5).Studies > 4 * StagedSimulation.FirstStage);
        Assert.All(
            new[] { 0, 0.01, 0.1, 0.5, 0.8, 0.97 },
            probability =>
            {
                var point = At(probability);
                Assert.True(point.Upper - point.Lower <= 0.06, $"{point}");
            }
        );
    }

    [Fact]
    public void The_same_seed_gives_the_same_rates_and_another_one_others()
    {
        ImmutableArray<CharacteristicPoint> Rates(ulong seed) =>
            StagedSimulation.Rates(
                1,
                2,
                new(2000, 0.02),
                seed,
                0.95,
                random => random.NextDouble() < 0.4 ? 3UL : 0
            );

        Assert.Equal(Rates(3), Rates(3));
        Assert.NotEqual(Rates(3)[0].Accepted, Rates(4)[0].Accepted);
    }

    [Theory]
    [InlineData(0, 100, 0.1, 0.95)]
    [InlineData(65, 100, 0.1, 0.95)]
    [InlineData(1, 0, 0.1, 0.95)]
    [InlineData(1, 1_000_001, 0.1, 0.95)]
    [InlineData(1, 100, -0.1, 0.95)]
    [InlineData(1, 100, 0.1, 1)]
    public void Arguments_outside_their_range_are_refused(
        int events,
        int most,
        double tolerance,
        double level
    ) =>
        Assert.ThrowsAny<ArgumentException>(() =>
            StagedSimulation.Rates(0, events, new(most, tolerance), 1, level, _ => 0)
        );
}
