namespace StabilityStudy.Core.Analysis;

/// <summary>The measured results of one specimen and analyte in order of time, which begin with the baseline.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Line">First line on which one of them stands.</param>
/// <param name="Times">Baseline, delays and replicates; only series of the same times are compared.</param>
/// <param name="Values">The results, as they are reported.</param>
internal sealed record ResultSeries(
    string Specimen,
    int Line,
    string Times,
    ImmutableArray<decimal> Values
)
{
    /// <summary>The results as a text, the same for the same numbers however they are written.</summary>
    public string Text { get; } =
        string.Join(
            '|',
            Values.Select(value => value.ToString("0.#########", CultureInfo.InvariantCulture))
        );

    /// <summary>Whether no result differs from another.</summary>
    public bool IsUnchanged => Values.All(value => value == Values[0]);

    /// <summary>The mean of the results before one of them.</summary>
    public double MeanBefore(int place) => Values.Take(place).Average(value => (double)value);

    /// <summary>Every series of an analyte that has a delayed result and nothing but numbers.</summary>
    /// <param name="rows">The rows of one analyte.</param>
    public static ImmutableArray<ResultSeries> Of(IEnumerable<ResultRow> rows) =>
        [.. rows.GroupBy(row => row.Specimen).Select(OfOne).OfType<ResultSeries>()];

    private static ResultSeries? OfOne(IGrouping<string, ResultRow> rows)
    {
        var ordered = rows.OrderBy(row => row.Occasion.TimePoint?.Delay ?? TimeSpan.Zero)
            .ThenBy(row => row.TestedAt)
            .ThenBy(row => row.SourceRow)
            .ToImmutableArray();
        var values = ordered
            .Select(row => row.Result)
            .OfType<MeasuredResult>()
            .Select(result => result.Value)
            .ToImmutableArray();
        return
            values.Length < ordered.Length
            || values.Any(value => value <= 0)
            || !ordered[0].Occasion.IsBaseline
            || ordered.All(row => row.Occasion.IsBaseline)
            ? null
            : new(
                rows.Key,
                ordered.Min(row => row.SourceRow),
                string.Join('|', ordered.Select(row => row.Occasion)),
                values
            );
    }
}
