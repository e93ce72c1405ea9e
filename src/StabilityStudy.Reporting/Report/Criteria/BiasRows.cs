using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The estimates that a criterion on the mean change rests on.</summary>
internal static class BiasRows
{
    private const int SkewnessDecimals = 2;

    public static IEnumerable<Row> Of(BiasWords words)
    {
        var bias = words.Result;
        // The long name of a share stands once, behind the interval.
        string Value(double mean) =>
            bias.Scale == ChangeScale.Share ? words.Number(mean) : words.Figure(mean);
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
            $"Mean change{(bias.Readings.Length > 1 ? " " + ReadingWords.Of(bias.Reading) : "")}, {NumberText.Percent(bias.ConfidenceLevel)} interval that spans those below",
            Value(mean.Mean),
            words.Interval(mean.Lower, mean.Upper),
            bias.Criterion
        );
        yield return EstimateRow.Other(
            $"  by specimens ({NumberText.Count(mean.BySpecimen.Count)})",
            Value(mean.BySpecimen.Mean),
            words.Interval(mean.BySpecimen.Lower, mean.BySpecimen.Upper),
            ""
        );
        foreach (
            var alike in mean.ByCluster.GroupBy(item => (item.Clusters, item.Lower, item.Upper))
        )
        {
            yield return EstimateRow.Other(
                $"  {ReadingWords.Over([.. alike.Select(item => item.Source)])} ({NumberText.Count(alike.Key.Clusters)})",
                Value(alike.First().Mean),
                words.Interval(alike.Key.Lower, alike.Key.Upper),
                ""
            );
        }

        yield return EstimateRow.Other(
            "  skewness; by how much it lengthens the interval, down and up",
            NumberText.Fixed(mean.Stretch.Skewness, SkewnessDecimals),
            $"× {NumberText.Fixed(mean.Stretch.Downward, SkewnessDecimals)}, × {NumberText.Fixed(mean.Stretch.Upward, SkewnessDecimals)}",
            EstimateRow.Criterion(bias.Criterion)
        );
        foreach (var other in bias.Readings.Where(item => item.Reading != bias.Reading))
        {
            if (other.Mean.TryGet(out var read))
            {
                yield return EstimateRow.Other(
                    $"Mean change {ReadingWords.Of(other.Reading)}{(other.LeftOut > 0 ? $" ({NumberText.Count(other.LeftOut)} left out)" : "")}",
                    Value(read.Mean),
                    words.Interval(read.Lower, read.Upper),
                    EstimateRow.Criterion(bias.Criterion)
                );
            }
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
}
