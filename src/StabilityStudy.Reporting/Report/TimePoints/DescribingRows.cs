using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>The figures that describe a cell and decide nothing.</summary>
internal static class DescribingRows
{
    private const int PercentDecimals = 2;

    public static IEnumerable<Row> Of(CellEstimates estimates, SequenceNames names)
    {
        yield return Mean("Mean change", estimates.MeanPercent, PercentDecimals, "%");
        yield return Mean(
            "Mean change in the unit",
            estimates.MeanAbsolute,
            names.EstimateDecimals,
            names.Analyte.ShownUnit == "%" ? "points" : names.Analyte.ShownUnit
        );
        yield return Order("Median change", estimates.MedianPercent);
        yield return Order("Hodges–Lehmann change", estimates.HodgesLehmannPercent);
        yield return estimates.SpreadPercent.TryGet(out var spread)
            ? EstimateRow.Other(
                "SD and skewness of the changes",
                $"{NumberText.Fixed(spread.StandardDeviation, PercentDecimals)} %, {NumberText.Fixed(spread.Skewness, 2)}",
                estimates.NoisePercent is { } noise
                    ? $"noise alone predicts SD {NumberText.Fixed(noise, PercentDecimals)} %"
                    : "",
                EstimateRow.Describes
            )
            : EstimateRow.Refused(
                "SD of the changes",
                estimates.SpreadPercent,
                EstimateRow.Describes
            );
        yield return estimates.AgreementPercent.TryGet(out var agreement)
            ? EstimateRow.Other(
                "Limits of agreement (mean ± 1.96 SD)",
                $"{NumberText.Interval(agreement.Lower, agreement.Upper, 1)} %",
                $"{NumberText.Interval(agreement.LowerExact.Lower, agreement.LowerExact.Upper, 1)}; {NumberText.Interval(agreement.UpperExact.Lower, agreement.UpperExact.Upper, 1)} %",
                EstimateRow.Describes
            )
            : EstimateRow.Refused(
                "Limits of agreement",
                estimates.AgreementPercent,
                EstimateRow.Describes
            );
        yield return estimates.PairedT.TryGet(out var test)
            ? EstimateRow.Other(
                "Test of no mean change in the unit, p",
                NumberText.PValue(test.PValue),
                "",
                EstimateRow.ShownOnly
            )
            : EstimateRow.Refused(
                "Test of no mean change",
                estimates.PairedT,
                EstimateRow.ShownOnly
            );
    }

    private static Row Mean(
        string name,
        Estimate<ClusteredMeanInterval> estimate,
        int decimals,
        string unit
    ) =>
        estimate.TryGet(out var mean)
            ? EstimateRow.Other(
                $"{name}, {NumberText.Percent(mean.ConfidenceLevel)} interval",
                $"{NumberText.Change(mean.Mean, decimals)} {unit}",
                $"{NumberText.Interval(mean.Lower, mean.Upper, decimals)} {unit}",
                EstimateRow.Describes
            )
            : EstimateRow.Refused(name, estimate, EstimateRow.Describes);

    private static Row Order(string name, Estimate<OrderInterval> estimate) =>
        estimate.TryGet(out var order)
            ? EstimateRow.Other(
                $"{name}, {NumberText.Fixed(100 * order.AchievedConfidence, 1)} % interval",
                $"{NumberText.Change(order.Value, PercentDecimals)} %",
                $"{NumberText.Interval(order.Lower, order.Upper, PercentDecimals)} %",
                EstimateRow.Describes
            )
            : EstimateRow.WithoutInterval(
                name,
                estimate,
                point => $"{NumberText.Change(point.Value, PercentDecimals)} %",
                EstimateRow.Describes
            );
}
