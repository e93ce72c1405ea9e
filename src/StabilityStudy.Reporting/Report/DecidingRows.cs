using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>The figures that the criteria of a cell rest on.</summary>
internal static class DecidingRows
{
    private const int SkewnessDecimals = 2;

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
        // The long name of a share stands once, behind the interval.
        string Value(double mean) =>
            bias.Scale == ChangeScale.Share
                ? CriterionWords.Number(bias, mean, names)
                : CriterionWords.Figure(bias, mean, names);
        string Interval(double lower, double upper) =>
            CriterionWords.Interval(bias, lower, upper, names);
        if (!bias.Mean.TryGet(out var mean))
        {
            yield return EstimateRow.Refused(
                "Mean change",
                bias.Mean,
                EstimateRow.Criterion(bias.Criterion)
            );
            yield break;
        }

        yield return EstimateRow.Deciding(
            $"Mean change, {NumberText.Percent(bias.ConfidenceLevel)} interval that spans both",
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
        if (bias.Spread.TryGet(out var spread))
        {
            yield return EstimateRow.Other(
                "  skewness (doubt: beyond 1 toward the limit)",
                NumberText.AgainstLimit(
                    spread.Skewness,
                    Math.Sign(spread.Skewness),
                    SkewnessDecimals
                ),
                Math.Abs(spread.Skewness) > 1 && bias.Reasons.All(reason => reason.Code != "skewed")
                    ? "away from the nearer limit: no doubt"
                    : "",
                EstimateRow.Criterion(bias.Criterion)
            );
        }

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

        var required = 100 * individual.RequiredShare;
        string Against(double share) => NumberText.AgainstLimit(100 * share, required, 1);
        yield return EstimateRow.Deciding(
            $"Share within the limit, one-sided {NumberText.Percent(individual.ConfidenceLevel)} bounds",
            $"{NumberText.Count(count.Inside)} of {NumberText.Count(count.Counted)}, {Against(bounds.Share)} %",
            $"{Against(bounds.OneSidedLower)} to {Against(bounds.OneSidedUpper)} %",
            individual.Criterion
        );
        yield return EstimateRow.Other(
            "  outside: measured, failed, undecidable",
            $"{NumberText.Count(count.OutsideMeasured)}, {NumberText.Count(count.Failed)}, {NumberText.Count(count.Undecidable)}",
            individual.MostOutside is { } most
                ? $"at most {NumberText.Count(most)} of {NumberText.Count(count.Counted - count.AgreeingBeyond)}{(count.AgreeingBeyond > 0 ? " that do not agree beyond a limit" : "")} may be outside"
                : "too few specimens to meet it",
            EstimateRow.Criterion(individual.Criterion)
        );
        if (count.RunShiftPercent is { } moved)
        {
            yield return EstimateRow.Other(
                "  outside, were every change moved by what the days' runs could have added",
                NumberText.Count(count.OutsideIfMoved),
                $"moved by ±{NumberText.Fixed(moved, 1)} %",
                EstimateRow.Criterion(individual.Criterion)
            );
        }
    }
}
