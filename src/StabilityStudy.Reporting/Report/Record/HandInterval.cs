using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>A mean and its interval as a pocket calculator gives them from listed numbers, apart from the statistics that decided.</summary>
/// <param name="Count">n.</param>
/// <param name="Sum">Sum of the numbers.</param>
/// <param name="SumOfSquares">Sum of their squares.</param>
/// <param name="T">Student's t that the report used.</param>
internal sealed record HandInterval(int Count, decimal Sum, decimal SumOfSquares, double T)
{
    /// <summary>Sums up the numbers; t is read off the report's own interval.</summary>
    public static HandInterval Of(ImmutableArray<decimal> values, MeanInterval found) =>
        Of(values, found.Upper - found.Mean, found.StandardError);

    /// <summary>The same of an interval over cluster means.</summary>
    public static HandInterval Of(ImmutableArray<decimal> means, ClusterInterval found) =>
        Of(means, found.Upper - found.Mean, found.StandardError);

    private static HandInterval Of(
        ImmutableArray<decimal> values,
        double reach,
        double standardError
    ) =>
        new(
            values.Length,
            values.Sum(),
            values.Sum(value => value * value),
            standardError == 0 ? 0 : reach / standardError
        );

    public decimal Mean => Sum / Count;

    public double StandardDeviation =>
        Count < 2 ? 0 : Math.Sqrt((double)((SumOfSquares - (Sum * Sum / Count)) / (Count - 1)));

    public double StandardError => StandardDeviation / Math.Sqrt(Count);

    public double Lower => (double)Mean - (T * StandardError);

    public double Upper => (double)Mean + (T * StandardError);
}
