using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report;

/// <summary>The figures that the criteria of a cell rest on.</summary>
internal static class DecidingRows
{
    public static IEnumerable<Row> Of(Cell cell, SequenceNames names) =>
        cell.Criteria.SelectMany(result =>
            result switch
            {
                BiasResult bias => Mean(bias, names),
                IndividualResult individual => Share(individual),
                _ => [],
            }
        );

    private static IEnumerable<Row> Mean(BiasResult bias, SequenceNames names)
    {
        var decimals = CriterionWords.Decimals(bias.Scale, names);
        var unit = TradeWords.Of(bias.Scale, names.Analyte.Unit);
        string Value(double mean) => $"{NumberText.Change(mean, decimals)} {unit}";
        string Interval(double lower, double upper) =>
            $"{NumberText.Interval(lower, upper, decimals)} {unit}";
        if (!bias.Mean.TryGet(out var mean))
        {
            yield return EstimateRow.Refused(
                "Mean change",
                bias.Mean,
                EstimateRow.Criterion(bias.Criterion)
            );
            yield break;
        }

        var level = NumberText.Percent(bias.ConfidenceLevel);
        var by = mean.DecidedBy == ClusteredMean.Clusters ? "collection days" : "specimens";
        yield return EstimateRow.Deciding(
            $"Mean change, {level} interval by {by}",
            Value(mean.Mean),
            Interval(mean.Lower, mean.Upper),
            bias.Criterion
        );
        yield return EstimateRow.Other(
            $"  by specimens ({NumberText.Count(mean.BySpecimen.Count)})",
            Value(mean.BySpecimen.Mean),
            Interval(mean.BySpecimen.Lower, mean.BySpecimen.Upper),
            ""
        );
        yield return mean.ByCluster.TryGet(out var byDay)
            ? EstimateRow.Other(
                $"  by collection days ({NumberText.Count(mean.ClusterCount)})",
                Value(byDay.Mean),
                Interval(byDay.Lower, byDay.Upper),
                ""
            )
            : EstimateRow.Refused("  by collection days", mean.ByCluster, "");
        if (bias.Equivalence.TryGet(out var equivalence))
        {
            yield return EstimateRow.Other(
                "Two one-sided tests against the limit, p",
                NumberText.PValue(equivalence.PValue),
                "",
                EstimateRow.ShownOnly
            );
        }
    }

    private static IEnumerable<Row> Share(IndividualResult individual)
    {
        var count = individual.Agreement;
        if (!individual.Bounds.TryGet(out var bounds))
        {
            yield return EstimateRow.Refused(
                "Share within the limit",
                individual.Bounds,
                EstimateRow.Criterion(individual.Criterion)
            );
            yield break;
        }

        yield return EstimateRow.Deciding(
            $"Share within the limit, one-sided {NumberText.Percent(individual.ConfidenceLevel)} bounds",
            $"{NumberText.Count(count.Inside)} of {NumberText.Count(count.Counted)}, {NumberText.Fixed(100 * bounds.Share, 1)} %",
            $"{NumberText.Range(100 * bounds.OneSidedLower, 100 * bounds.OneSidedUpper, 1)} %",
            individual.Criterion
        );
        yield return EstimateRow.Other(
            "  outside: measured, failed, undecidable",
            $"{NumberText.Count(count.OutsideMeasured)}, {NumberText.Count(count.Failed)}, {NumberText.Count(count.Undecidable)}",
            individual.MostOutside is { } most
                ? $"at most {NumberText.Count(most)} of {NumberText.Count(count.Counted)} may be outside"
                : "too few specimens to meet it",
            EstimateRow.Criterion(individual.Criterion)
        );
    }
}
