using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>How often a window is stated for two instruments although one of them changes results by the allowable bias.</summary>
[Trait("lane", "slow")]
public sealed class ScopeSimulationTests
{
    private static readonly int s_studies = LongProof.Setting("SIMULATED_STUDIES", 200);

    [Fact]
    public void One_of_two_at_the_limit_is_claimed_for_both_at_most_five_times_in_a_hundred()
    {
        SimulatedRateAssert.AtMost(
            0.05,
            ScopeScenarios.Of(0, MeanScenarios.Limit, 40, byRule: true).Run(s_studies)
        );
        SimulatedRateAssert.Between(
            0.9,
            1,
            ScopeScenarios.Of(0, MeanScenarios.Limit, 40, byRule: false).Run(s_studies)
        );
    }

    /// <summary>Each has the power of forty specimens on ten days, at least 0.94 at a change of 4 %; both the product.</summary>
    [Theory]
    [InlineData(0, 0, 0.98)]
    [InlineData(4, 4, 0.88)]
    public void Two_far_from_the_limit_are_claimed(double first, double second, double atLeast) =>
        SimulatedRateAssert.Between(
            atLeast,
            1,
            ScopeScenarios.Of(first, second, 40, byRule: true).Run(s_studies)
        );
}
