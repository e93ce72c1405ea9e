using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The counts that a criterion on single specimens rests on.</summary>
internal static class IndividualRows
{
    public static IEnumerable<Row> Of(IndividualResult individual)
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
            $"Share within the limit{(individual.Readings.Length > 1 ? " " + ReadingWords.Of(individual.Reading) : "")}, one-sided {NumberText.Percent(individual.ConfidenceLevel)} bounds",
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
        if (count.RunShiftPercent > 0)
        {
            yield return EstimateRow.Other(
                "  outside, were every change moved by what the runs could have added",
                NumberText.Count(count.OutsideIfMoved),
                $"moved by ±{NumberText.Fixed(count.RunShiftPercent, 1)} % of the allowable difference",
                EstimateRow.Criterion(individual.Criterion)
            );
        }

        foreach (var other in individual.Readings.Where(item => item.Reading != individual.Reading))
        {
            yield return EstimateRow.Other(
                $"Within the limit {ReadingWords.Of(other.Reading)}",
                $"{NumberText.Count(other.Agreement.Inside)} of {NumberText.Count(other.Agreement.Counted)}",
                $"{NumberText.Count(other.Agreement.OutsideIfMoved)} outside, were every change moved",
                EstimateRow.Criterion(individual.Criterion)
            );
        }
    }
}
