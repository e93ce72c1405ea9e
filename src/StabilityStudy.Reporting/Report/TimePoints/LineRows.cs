using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>The lines of delayed result on baseline.</summary>
internal static class LineRows
{
    private const int SlopeDecimals = 3;

    public static IEnumerable<Row> Of(CellEstimates estimates, SequenceNames names)
    {
        yield return Line("Weighted Deming", estimates.WeightedDeming, names, "describes, primary");
        yield return Line("Deming", estimates.Deming, names, EstimateRow.ShownOnly);
        yield return Line(
            "Ordinary least squares",
            estimates.OrdinaryLeastSquares,
            names,
            EstimateRow.ShownOnly
        );
        yield return estimates.PassingBablok.TryGet(out var ranks)
            ? Coefficients(
                "Passing–Bablok",
                new(ranks.Slope, ranks.SlopeLower, ranks.SlopeUpper),
                new(ranks.Intercept, ranks.InterceptLower, ranks.InterceptUpper),
                names,
                EstimateRow.Describes
            )
            : EstimateRow.WithoutInterval(
                "Passing–Bablok: slope; intercept",
                estimates.PassingBablok,
                point => Values(point.Value, point.Intercept!.Value, names),
                EstimateRow.Describes
            );
        if (estimates.Correlation.TryGet(out var correlation))
        {
            yield return EstimateRow.Other(
                "Correlation r",
                NumberText.Fixed(correlation.Pearson, SlopeDecimals),
                NumberText.Range(correlation.Lower, correlation.Upper, SlopeDecimals),
                EstimateRow.ShownOnly
            );
        }
    }

    private static Row Line(
        string name,
        Estimate<LineFit> estimate,
        SequenceNames names,
        string feeds
    ) =>
        estimate.TryGet(out var line)
            ? Coefficients(
                name,
                new(line.Slope.Value, line.Slope.Lower, line.Slope.Upper),
                new(line.Intercept.Value, line.Intercept.Lower, line.Intercept.Upper),
                names,
                feeds
            )
            : EstimateRow.Refused(name, estimate, feeds);

    private static Row Coefficients(
        string name,
        Coefficient slope,
        Coefficient intercept,
        SequenceNames names,
        string feeds
    ) =>
        EstimateRow.Other(
            $"{name}: slope; intercept, {names.Analyte.ShownUnit}",
            Values(slope.Value, intercept.Value, names),
            $"{NumberText.Range(slope.Lower, slope.Upper, SlopeDecimals)}; {NumberText.Interval(intercept.Lower, intercept.Upper, names.EstimateDecimals)}",
            feeds
        );

    private static string Values(double slope, double intercept, SequenceNames names) =>
        $"{NumberText.Fixed(slope, SlopeDecimals)}; {NumberText.Change(intercept, names.EstimateDecimals)}";

    private sealed record Coefficient(double Value, double Lower, double Upper);
}
