using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Controls;

public sealed class RunBridgingTests
{
    /// <summary>A bridging result typed in the wrong unit must not stop the analysis, and must not look like agreement.</summary>
    [Theory]
    [InlineData(100_000_000, 0.00001)]
    [InlineData(0.00001, 100_000_000)]
    public void An_absurd_ratio_of_runs_is_a_huge_change_and_no_crash(double early, double late)
    {
        var collection = Collection.On(10, 40);
        var pairs = Enumerable
            .Range(0, 40)
            .Select(i =>
                SimulatedPairs.Compared(
                    i,
                    30 + (i % 7),
                    30.1 + (i % 7) + (0.1 * (i % 3)),
                    collection
                )
            )
            .ToImmutableArray();
        var study = SimulatedStudy.OfMean.Bridged([
            .. pairs
                .SelectMany(pair =>
                    new[] { (pair.Baseline!.Run, early), (pair.Delayed!.Run, late) }
                )
                .Distinct(),
        ]);

        Assert.Equal(Verdict.Met, Assert.Single(SimulatedStudy.OfMean.Criteria(pairs)).Verdict);
        Assert.NotEqual(Verdict.Met, Assert.Single(study.Criteria(pairs)).Verdict);
    }
}
