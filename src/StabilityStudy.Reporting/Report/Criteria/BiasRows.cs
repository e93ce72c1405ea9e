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
            $"Mean change, {NumberText.Percent(bias.ConfidenceLevel)} interval that spans both",
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
        yield return mean.ByCluster.TryGet(out var byDay)
            ? EstimateRow.Other(
                $"  by collection days ({NumberText.Count(mean.ClusterCount)})",
                Value(byDay.Mean),
                words.Interval(byDay.Lower, byDay.Upper),
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
                Math.Abs(spread.Skewness) > 1 && !bias.Reasons.OfType<SkewedReason>().Any()
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
}
