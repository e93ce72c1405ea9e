using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Tests.Simulations.Scenarios;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>The simulations begin with pairs; the same data as rows of a study, analyzed in full, conclude the same.</summary>
public sealed class SimulatedPathTests
{
    private const int Studies = 30;
    private const int Specimens = 20;

    [Fact]
    public void Pairs_conclude_as_the_rows_of_a_study_do()
    {
        var random = new SeededRandom(20260306);
        var cell = new SimulatedCell(Collection.On(10, Specimens), 4.5, 4, ChangeShape.Normal)
        {
            Decimals = 1,
            Level = 60,
        };
        var seen = new HashSet<Conclusion>();
        for (var study = 0; study < Studies; study++)
        {
            var pairs = cell.Draw(random);
            var whole = SmallStudy.Of(
                [6],
                pairs.Select(pair =>
                    $"{SmallRows.Text(pair.Values().Baseline)} | {SmallRows.Text(pair.Values().Delayed)}"
                )
            );

            var conclusion = new SimulatedStudy(whole.Inputs.Protocol).Conclude([pairs]);

            Assert.Equal(whole.Cell().OwnConclusion, conclusion);
            seen.Add(conclusion);
        }

        Assert.True(seen.Count > 1);
    }
}
