using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// How the results of one time point arise. A run moves all its results alike.
/// </summary>
/// <param name="Collection">Days and runs.</param>
/// <param name="MeanPercent">True mean change, percent of the baseline.</param>
/// <param name="SdPercent">Its SD among specimens, measurement included.</param>
/// <param name="Shape">Distribution of the change among specimens.</param>
internal sealed record SimulatedCell(
    Collection Collection,
    double MeanPercent,
    double SdPercent,
    ChangeShape Shape
)
{
    /// <summary>SD of what a run adds, percent.</summary>
    public double RunSdPercent { get; init; }

    /// <summary>Decimals of a reported result.</summary>
    public int Decimals { get; init; } = SimulatedPairs.Unrounded;

    /// <summary>Median of the true baselines.</summary>
    public double Level { get; init; } = 30;

    /// <summary>SD of the logarithm of the true baselines.</summary>
    public double LevelSpread { get; init; } = 0.15;

    /// <summary>Imprecision of the baseline itself, percent: the change is then relative to the true baseline.</summary>
    public double BaselineCvPercent { get; init; }

    public ImmutableArray<PairRecord> Draw(SeededRandom random)
    {
        var first = Collection.Shifts(Collection.BaselineRun.Max() + 1, random, RunSdPercent);
        var second = Collection.Shifts(Collection.DelayedRun.Max() + 1, random, RunSdPercent);
        var pairs = ImmutableArray.CreateBuilder<PairRecord>(Collection.Day.Length);
        for (var i = 0; i < Collection.Day.Length; i++)
        {
            var level = Level * Math.Exp(LevelSpread * random.NextNormal());
            var percent =
                MeanPercent
                + second[Collection.DelayedRun[i]]
                - first[Collection.BaselineRun[i]]
                + (SdPercent * Shape.Draw(random));
            var error = BaselineCvPercent == 0 ? 0 : BaselineCvPercent * random.NextNormal();
            pairs.Add(
                SimulatedPairs.Compared(
                    i,
                    level * (1 + (error / 100)),
                    level * (1 + (percent / 100)),
                    Collection,
                    Decimals
                )
            );
        }

        return pairs.MoveToImmutable();
    }
}
