using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Estimates;

/// <summary>Estimates that an expert may ask for beside the primary ones. None of them decides.</summary>
/// <param name="PercentilesPercent">2.5 and 97.5 % percentiles of the percent changes, with no assumption on their distribution.</param>
/// <param name="TolerancePercent">Tolerance interval of the percent changes.</param>
/// <param name="NormalityPercent">Shapiro–Wilk test of the percent changes.</param>
/// <param name="SignedRank">Wilcoxon's signed-rank test of no change.</param>
/// <param name="WeightedLeastSquares">Delayed on baseline, weights 1/baseline².</param>
/// <param name="TheilSen">Delayed on baseline, Theil–Sen.</param>
/// <param name="DemingBootstrap">Slope of the Deming line with its bootstrap interval.</param>
/// <param name="ChangesAtLevels">Change at each decision level that the baselines surround, by lines other than the one that decides.</param>
/// <param name="LevelDependence">Change of the logarithm for each doubling of the level.</param>
/// <param name="Kendall">Kendall's τ-b.</param>
/// <param name="Concordance">Lin's concordance correlation.</param>
public sealed record FurtherEstimates(
    Estimate<PercentileRange> PercentilesPercent,
    Estimate<ToleranceInterval> TolerancePercent,
    Estimate<NormalityTest> NormalityPercent,
    Estimate<SignedRankTest> SignedRank,
    Estimate<LineFit> WeightedLeastSquares,
    Estimate<TheilSenFit> TheilSen,
    Estimate<SlopeBootstrapInterval> DemingBootstrap,
    ImmutableArray<ChangeAtLevel> ChangesAtLevels,
    Estimate<LineFit> LevelDependence,
    Estimate<KendallTau> Kendall,
    Estimate<ConcordanceCoefficient> Concordance
)
{
    /// <summary>Share of specimens that percentiles enclose.</summary>
    public const double PercentileCoverage = 0.95;

    /// <summary>Share of specimens that the tolerance interval holds.</summary>
    public const double ToleranceCoverage = 0.90;

    /// <summary>Samples drawn for the bootstrap.</summary>
    public const int Replicates = 2000;

    /// <summary>Seed of the bootstrap, so that the same data give the same interval.</summary>
    public const ulong Seed = 20250101;

    internal static FurtherEstimates Of(
        CellData data,
        Estimate<RelativeChanges> relative,
        Estimate<PassingBablokFit> passingBablok,
        Analyte analyte
    )
    {
        const double level = CellEstimates.DescriptiveConfidence;
        var x = data.Pairs.X.AsSpan();
        var y = data.Pairs.Y.AsSpan();
        return new FurtherEstimates(
            relative.Then(values =>
                Percentile.Range(values.AsSpan(), PercentileCoverage, PercentileType.Type8)
            ),
            relative.Then(values =>
                ToleranceInterval.Compute(values.AsSpan(), ToleranceCoverage, level)
            ),
            relative.Then(values => ShapiroWilk.Compute(values.AsSpan())),
            WilcoxonSignedRank.Compute(data.Pairs),
            ByBaseline(data.Pairs, level),
            Statistics.Regression.TheilSen.Fit(data.Pairs, level),
            data.Compared.Length > LargestSample.Bootstrap
                ? Estimate.Refused<SlopeBootstrapInterval>(Refusal.TooManyForDemingBootstrap)
                : SlopeBootstrap.Deming(
                    x,
                    y,
                    (double)analyte.ErrorVarianceRatio,
                    level,
                    Replicates,
                    Seed
                ),
            ChangeAtLevel.Of(data, passingBablok, analyte, level),
            Statistics.Regression.LevelDependence.Fit(x, y, level),
            KendallRankCorrelation.Compute(data.Pairs, level),
            ConcordanceCorrelation.Compute(x, y, level)
        );
    }

    /// <summary>The line with weights of the reciprocal square of the baseline: its residual SD is a share of the baseline.</summary>
    internal static Estimate<LineFit> ByBaseline(ExactPairs pairs, double level) =>
        pairs.X.Any(value => value <= 0)
            ? Estimate.Refused<LineFit>(Refusal.NotPositiveForBaselineWeights)
            : Statistics.Regression.WeightedLeastSquares.Fit(
                pairs.X.AsSpan(),
                pairs.Y.AsSpan(),
                [.. pairs.X.Select(value => 1 / (value * value))],
                level
            );
}
