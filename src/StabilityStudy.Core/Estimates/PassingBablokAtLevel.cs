using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Estimates;

/// <summary>The change that a Passing–Bablok line predicts at a decision level: description, beside the line that decides.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Change">Predicted change in the unit, with its bootstrap interval.</param>
public sealed record PassingBablokAtLevel(decimal Level, Estimate<BootstrapBias> Change)
{
    /// <summary>Every decision level that the baselines surround.</summary>
    internal static ImmutableArray<PassingBablokAtLevel> Of(
        CellData data,
        Analyte analyte,
        double confidenceLevel
    )
    {
        decimal[] levels =
        [
            .. analyte.DecisionLevels.Where(level =>
                LevelCoverage.Of(level, data, analyte).Gap is null
            ),
        ];
        return
        [
            .. levels.Zip(
                PassingBablokBootstrap.BiasAt(
                    data.Pairs,
                    Array.ConvertAll(levels, level => (double)level),
                    confidenceLevel,
                    FurtherEstimates.Replicates,
                    FurtherEstimates.Seed
                ),
                (level, change) => new PassingBablokAtLevel(level, change)
            ),
        ];
    }
}
