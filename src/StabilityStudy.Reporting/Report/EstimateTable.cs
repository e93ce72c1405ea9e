using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Reporting.Report;

/// <summary>The estimates of a cell, each beside the criterion it feeds, so that a reader sees which number decided.</summary>
internal static class EstimateTable
{
    private const int PercentDecimals = 2;
    private const int SlopeDecimals = 3;
    private const string Describes = "describes";
    private const string Robustness = "robustness only";

    public static Table Of(Cell cell, SequenceNames names) =>
        new(
            "Estimates",
            [
                new Column("Estimate", ColumnAlignment.Left, 4),
                new Column("Value", ColumnAlignment.Left, 1.5),
                new Column("Interval", ColumnAlignment.Left, 2.5),
                new Column("Feeds", ColumnAlignment.Left, 1.6),
            ],
            [
                .. Deciding(cell, names),
                .. Describing(cell.Estimates, names),
                .. Lines(cell.Estimates, names),
            ],
            "Only the lines in bold decide. The absence of a significant change is not equivalence."
        );

    private static IEnumerable<Row> Deciding(Cell cell, SequenceNames names) =>
        cell.Criteria.SelectMany(result =>
            result switch
            {
                BiasResult bias => BiasRows(bias, names),
                IndividualResult individual => IndividualRows(individual),
                _ => [],
            }
        );

    private static IEnumerable<Row> BiasRows(BiasResult bias, SequenceNames names)
    {
        var decimals = CriterionWords.Decimals(bias.Scale, names);
        var unit = TradeWords.Of(bias.Scale, names.Analyte.Unit);
        var level = NumberText.Percent(bias.ConfidenceLevel);
        if (!bias.Mean.TryGet(out var mean))
        {
            yield return Refused("Mean change", bias.Mean, "criterion " + bias.Criterion);
            yield break;
        }

        yield return Decisive(
            $"Mean change, {level} interval by {(mean.DecidedBy == "clusters" ? "collection days" : mean.DecidedBy)}",
            mean.Mean,
            mean.Lower,
            mean.Upper,
            decimals,
            unit,
            bias.Criterion
        );
        yield return Plain(
            $"  by specimens ({NumberText.Count(mean.BySpecimen.Count)})",
            mean.BySpecimen,
            decimals,
            unit
        );
        if (mean.ByCluster.TryGet(out var byDay))
        {
            yield return Plain(
                $"  by collection days ({NumberText.Count(mean.ClusterCount)})",
                byDay,
                decimals,
                unit
            );
        }

        if (bias.Equivalence.TryGet(out var equivalence))
        {
            yield return new Row([
                new TableCell("Two one-sided tests against the limit, p"),
                new TableCell(NumberText.PValue(equivalence.PValue)),
                new TableCell(""),
                new TableCell("shown only", Emphasis.Muted),
            ]);
        }
    }

    private static IEnumerable<Row> IndividualRows(IndividualResult individual)
    {
        var count = individual.Agreement;
        if (!individual.Bounds.TryGet(out var bounds))
        {
            yield return Refused(
                "Share within the allowable difference",
                individual.Bounds,
                "criterion " + individual.Criterion
            );
            yield break;
        }

        var level = NumberText.Percent(bounds.ConfidenceLevel);
        yield return new Row([
            new TableCell($"Share within the limit, one-sided {level} bounds", Emphasis.Strong),
            new TableCell(
                $"{NumberText.Count(count.Inside)} of {NumberText.Count(count.Counted)}, {NumberText.Fixed(100 * bounds.Share, 1)} %",
                Emphasis.Strong
            ),
            new TableCell(
                $"{NumberText.Fixed(100 * bounds.OneSidedLower, 1)} to {NumberText.Fixed(100 * bounds.OneSidedUpper, 1)} %",
                Emphasis.Strong
            ),
            new TableCell("criterion " + individual.Criterion, Emphasis.Strong),
        ]);
        yield return new Row([
            new TableCell("  outside: measured, failed, undecidable"),
            new TableCell(
                $"{NumberText.Count(count.OutsideMeasured)}, {NumberText.Count(count.Failed)}, {NumberText.Count(count.Undecidable)}"
            ),
            new TableCell(
                individual.MostOutside is { } most
                    ? $"at most {NumberText.Count(most)} of {NumberText.Count(count.Counted)} may be outside"
                    : "too few specimens to meet it"
            ),
            new TableCell("criterion " + individual.Criterion),
        ]);
    }

    private static IEnumerable<Row> Describing(CellEstimates estimates, SequenceNames names)
    {
        var unit = names.Analyte.Unit;
        var decimals = names.EstimateDecimals;
        yield return Mean(
            "Mean change, 95 % interval",
            estimates.MeanPercent,
            PercentDecimals,
            "%"
        );
        yield return Mean(
            "Mean change in the unit, 95 % interval",
            estimates.MeanAbsolute,
            decimals,
            unit
        );
        yield return Order("Median change", estimates.MedianPercent);
        yield return Order("Hodges–Lehmann change", estimates.HodgesLehmannPercent);
        yield return estimates.SpreadPercent.TryGet(out var spread)
            ? Text(
                "SD and skewness of the changes",
                $"{NumberText.Fixed(spread.StandardDeviation, PercentDecimals)} %, {NumberText.Fixed(spread.Skewness, 1)}",
                Expected(estimates),
                Describes
            )
            : Refused("SD of the changes", estimates.SpreadPercent, Describes);
        if (estimates.AgreementPercent.TryGet(out var agreement))
        {
            yield return Text(
                "Limits of agreement (mean ± 1.96 SD)",
                $"{NumberText.Interval(agreement.Lower, agreement.Upper, 1)} %",
                $"{NumberText.Interval(agreement.LowerExact.Lower, agreement.LowerExact.Upper, 1)}; {NumberText.Interval(agreement.UpperExact.Lower, agreement.UpperExact.Upper, 1)} %",
                Describes
            );
        }
        else
        {
            yield return Refused("Limits of agreement", estimates.AgreementPercent, Describes);
        }

        yield return estimates.PairedT.TryGet(out var test)
            ? Text("Test of no mean change, p", NumberText.PValue(test.PValue), "", "shown only")
            : Refused("Test of no mean change", estimates.PairedT, Describes);
    }

    private static IEnumerable<Row> Lines(CellEstimates estimates, SequenceNames names)
    {
        foreach (
            var (name, fit, feeds) in new[]
            {
                ("Weighted Deming", estimates.WeightedDeming, "describes, primary"),
                ("Deming", estimates.Deming, Robustness),
                ("Ordinary least squares", estimates.OrdinaryLeastSquares, Robustness),
            }
        )
        {
            yield return fit.TryGet(out var line)
                ? Line(
                    name,
                    line.Slope.Value,
                    line.Slope.Lower,
                    line.Slope.Upper,
                    line.Intercept.Value,
                    line.Intercept.Lower,
                    line.Intercept.Upper,
                    names,
                    feeds
                )
                : Refused(name, fit, feeds);
        }

        yield return estimates.PassingBablok.TryGet(out var ranks)
            ? Line(
                "Passing–Bablok",
                ranks.Slope,
                ranks.SlopeLower,
                ranks.SlopeUpper,
                ranks.Intercept,
                ranks.InterceptLower,
                ranks.InterceptUpper,
                names,
                Robustness
            )
            : Refused("Passing–Bablok", estimates.PassingBablok, Robustness);
        if (estimates.Correlation.TryGet(out var correlation))
        {
            yield return Text(
                "Correlation r",
                NumberText.Fixed(correlation.Pearson, SlopeDecimals),
                NumberText.Range(correlation.Lower, correlation.Upper, SlopeDecimals),
                Describes
            );
        }
    }

    private static Row Line(
        string name,
        double slope,
        double slopeLower,
        double slopeUpper,
        double intercept,
        double interceptLower,
        double interceptUpper,
        SequenceNames names,
        string feeds
    ) =>
        Text(
            $"{name}: slope; intercept, {names.Analyte.Unit}",
            $"{NumberText.Fixed(slope, SlopeDecimals)}; {NumberText.Change(intercept, names.EstimateDecimals)}",
            $"{NumberText.Range(slopeLower, slopeUpper, SlopeDecimals)}; {NumberText.Interval(interceptLower, interceptUpper, names.EstimateDecimals)}",
            feeds
        );

    private static string Expected(CellEstimates estimates) =>
        estimates.NoisePercent is { } noise
            ? $"noise alone predicts SD {NumberText.Fixed(noise, PercentDecimals)} %"
            : "";

    private static Row Mean(
        string name,
        Estimate<ClusteredMeanInterval> estimate,
        int decimals,
        string unit
    ) =>
        estimate.TryGet(out var mean)
            ? Text(
                name,
                $"{NumberText.Change(mean.Mean, decimals)} {unit}",
                $"{NumberText.Interval(mean.Lower, mean.Upper, decimals)} {unit}",
                Describes
            )
            : Refused(name, estimate, Describes);

    private static Row Order(string name, Estimate<OrderInterval> estimate) =>
        estimate.TryGet(out var order)
            ? Text(
                $"{name}, {NumberText.Fixed(100 * order.AchievedConfidence, 1)} % interval",
                $"{NumberText.Change(order.Value, PercentDecimals)} %",
                $"{NumberText.Interval(order.Lower, order.Upper, PercentDecimals)} %",
                Robustness
            )
            : Refused(name, estimate, Robustness);

    private static Row Plain(string name, MeanInterval mean, int decimals, string unit) =>
        Text(
            name,
            $"{NumberText.Change(mean.Mean, decimals)} {unit}",
            $"{NumberText.Interval(mean.Lower, mean.Upper, decimals)} {unit}",
            ""
        );

    private static Row Decisive(
        string name,
        double value,
        double lower,
        double upper,
        int decimals,
        string unit,
        string criterion
    ) =>
        new([
            new TableCell(name, Emphasis.Strong),
            new TableCell($"{NumberText.Change(value, decimals)} {unit}", Emphasis.Strong),
            new TableCell($"{NumberText.Interval(lower, upper, decimals)} {unit}", Emphasis.Strong),
            new TableCell("criterion " + criterion, Emphasis.Strong),
        ]);

    private static Row Text(string name, string value, string interval, string feeds) =>
        new([
            new TableCell(name),
            new TableCell(value),
            new TableCell(interval),
            new TableCell(feeds, Emphasis.Muted),
        ]);

    private static Row Refused<T>(string name, Estimate<T> estimate, string feeds)
        where T : class =>
        new([
            new TableCell(name),
            new TableCell("not computable"),
            new TableCell(estimate.NotComputable?.Reason ?? ""),
            new TableCell(feeds, Emphasis.Muted),
        ]);
}
