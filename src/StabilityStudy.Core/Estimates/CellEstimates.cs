using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Noise;
using StabilityStudy.Statistics.Outliers;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Estimates;

/// <summary>The estimates that describe a cell. None of them decides; the criteria do, with figures of their own.</summary>
/// <param name="Compared">Number of compared pairs.</param>
/// <param name="CollectionDays">Number of collection days among them.</param>
/// <param name="MeanPercent">Mean percent change, interval over specimens, days, runs and persons.</param>
/// <param name="MeanAbsolute">Mean change in the unit, likewise.</param>
/// <param name="SpreadPercent">SD, skewness and extremes of the percent changes.</param>
/// <param name="AgreementPercent">Limits of agreement of the percent changes.</param>
/// <param name="AgreementAbsolute">Limits of agreement of the changes in the unit.</param>
/// <param name="MedianPercent">Median percent change.</param>
/// <param name="HodgesLehmannPercent">Hodges–Lehmann estimate of the percent change.</param>
/// <param name="PairedT">Test of no mean change, shown because its absence of significance is not equivalence.</param>
/// <param name="WeightedDeming">Delayed on baseline, weighted Deming with the protocol's error variance ratio: primary.</param>
/// <param name="Deming">Delayed on baseline, Deming.</param>
/// <param name="OrdinaryLeastSquares">Delayed on baseline, ordinary least squares.</param>
/// <param name="PassingBablok">Delayed on baseline, Passing–Bablok.</param>
/// <param name="Correlation">Pearson correlation, description only.</param>
/// <param name="Outliers">Generalised extreme Studentized deviate test on the percent changes.</param>
/// <param name="NoisePercent">Expected SD of one percent change from between-run imprecision alone; null when the protocol states no CV.</param>
public sealed record CellEstimates(
    int Compared,
    int CollectionDays,
    Estimate<ClusteredMeanInterval> MeanPercent,
    Estimate<ClusteredMeanInterval> MeanAbsolute,
    Estimate<SpreadSummary> SpreadPercent,
    Estimate<LimitsOfAgreement> AgreementPercent,
    Estimate<LimitsOfAgreement> AgreementAbsolute,
    Estimate<OrderInterval> MedianPercent,
    Estimate<OrderInterval> HodgesLehmannPercent,
    Estimate<PairedTTest> PairedT,
    Estimate<LineFit> WeightedDeming,
    Estimate<LineFit> Deming,
    Estimate<LineFit> OrdinaryLeastSquares,
    Estimate<PassingBablokFit> PassingBablok,
    Estimate<CorrelationCoefficient> Correlation,
    Estimate<ExtremeStudentizedDeviate> Outliers,
    double? NoisePercent
)
{
    /// <summary>Confidence level of the describing intervals.</summary>
    public const double DescriptiveConfidence = 0.95;

    /// <summary>Significance level of the outlier flags.</summary>
    public const double OutlierSignificance = 0.05;

    /// <summary>Estimates beside these that an expert may ask for.</summary>
    public required FurtherEstimates Further { get; init; }

    internal static CellEstimates Of(CellData data, StudyProtocol protocol, Analyte analyte)
    {
        var relative = RelativeChange.Percent(data.Pairs);
        var x = data.Pairs.X.AsSpan();
        var y = data.Pairs.Y.AsSpan();
        var ratio = (double)analyte.ErrorVarianceRatio;
        const double level = DescriptiveConfidence;
        var passingBablok = Statistics.Regression.PassingBablok.Fit(data.Pairs, level);
        return new CellEstimates(
            data.Compared.Length,
            data.Errors.Counts.Days,
            relative.Then(values =>
                ClusteredMean.WithInterval(values.AsSpan(), data.Errors.Clusterings, level)
            ),
            ClusteredMean.WithInterval(
                data.Pairs.Difference.AsSpan(),
                data.Errors.Clusterings,
                level
            ),
            relative.Then(values => Spread.Summarize(values.AsSpan())),
            relative.Then(values => LimitsOfAgreement.Compute(values.AsSpan(), level)),
            LimitsOfAgreement.Compute(data.Pairs.Difference.AsSpan(), level),
            relative.Then(values => Median.WithInterval(values.AsSpan(), level)),
            relative.Then(values => HodgesLehmann.WithInterval(values.AsSpan(), level)),
            TestOfNoChange(data),
            WeightedDemingRegression.Fit(x, y, ratio, level),
            DemingRegression.Fit(x, y, ratio, level),
            Statistics.Regression.OrdinaryLeastSquares.Fit(x, y, level),
            passingBablok,
            PearsonCorrelation.Compute(x, y, level),
            relative.Then(values => OutlierFlags.Find(values)),
            analyte.BetweenRunCvPercent is { } cv
                ? ExpectedDifference.StandardDeviationPercent(
                    (double)cv,
                    protocol.Replicates,
                    protocol.Replicates
                )
                : null
        )
        {
            Further = FurtherEstimates.Of(data, relative, passingBablok, analyte),
        };
    }

    private static Estimate<PairedTTest> TestOfNoChange(CellData data)
    {
        var difference = ArithmeticMean.WithInterval(
            data.Pairs.Difference.AsSpan(),
            DescriptiveConfidence
        );
        return difference.TryGet(out var mean)
            ? Statistics.Agreement.PairedT.Compute(mean)
            : difference.RefusedAs<PairedTTest>();
    }
}
