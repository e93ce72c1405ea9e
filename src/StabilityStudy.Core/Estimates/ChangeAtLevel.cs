using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Estimates;

/// <summary>The change at a decision level by lines other than the one that decides: description.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Deming">Predicted change in the unit by Deming regression of constant error, with the widest of the intervals over specimens and clusters.</param>
/// <param name="OrdinaryLeastSquares">Predicted change in the unit by ordinary least squares.</param>
/// <param name="PassingBablok">Predicted change in the unit by Passing–Bablok regression, with its bootstrap interval.</param>
public sealed record ChangeAtLevel(
    decimal Level,
    Estimate<BiasAtLevel> Deming,
    Estimate<BiasAtLevel> OrdinaryLeastSquares,
    Estimate<BootstrapBias> PassingBablok
)
{
    /// <summary>Every decision level that the baselines surround.</summary>
    internal static ImmutableArray<ChangeAtLevel> Of(
        CellData data,
        Estimate<PassingBablokFit> passingBablok,
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
                    passingBablok,
                    Array.ConvertAll(levels, level => (double)level),
                    confidenceLevel,
                    FurtherEstimates.Replicates,
                    FurtherEstimates.Seed
                ),
                (level, change) =>
                    new ChangeAtLevel(
                        level,
                        DemingRegression.BiasAt(
                            data.Pairs.X.AsSpan(),
                            data.Pairs.Y.AsSpan(),
                            (double)analyte.ErrorVarianceRatio,
                            (double)level,
                            confidenceLevel,
                            data.Errors.Clusterings
                        ),
                        Statistics.Regression.OrdinaryLeastSquares.BiasAt(
                            data.Pairs.X.AsSpan(),
                            data.Pairs.Y.AsSpan(),
                            (double)level,
                            confidenceLevel
                        ),
                        change
                    )
            ),
        ];
    }
}
