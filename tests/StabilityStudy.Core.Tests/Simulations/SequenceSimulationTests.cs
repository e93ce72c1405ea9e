using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>How often at least one time point of a sequence, or one of several looks, is called supported although each true change is the limit.</summary>
[Trait("lane", "slow")]
public sealed class SequenceSimulationTests
{
    private const int Sequences = 700;

    /// <summary>Independent: 0.048 to 0.051 at any correlation.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void The_error_of_a_sequence_is_that_of_one_time_point(double correlation)
    {
        SimulatedRateAssert.Between(
            0.048,
            0.051,
            SequenceScenarios.InSequence(Collection.InOneRun(10), correlation).Run(Sequences)
        );
        SimulatedRateAssert.AtMost(
            0.051,
            SequenceScenarios
                .InSequenceAfterSupported(Collection.On(5, 10), correlation)
                .Run(Sequences)
        );
    }

    /// <summary>Independent: one look again 0.080, two planned looks at 95 % 0.041.</summary>
    [Theory]
    [InlineData(2, 0.90, 0.080)]
    [InlineData(2, 0.95, 0.041)]
    public void Looking_again_adds_claims_unless_it_was_planned(
        int looks,
        double confidence,
        double independent
    ) => SimulatedRateAssert.Is(independent, LookScenarios.Looks(looks, confidence).Run(Sequences));
}
