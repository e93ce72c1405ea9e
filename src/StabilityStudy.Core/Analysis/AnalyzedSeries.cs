namespace StabilityStudy.Core.Analysis;

/// <summary>The results of one analyte that measures by itself.</summary>
/// <param name="Analyte">The analyte.</param>
/// <param name="Specimens">Its rows, those of a specimen together and in order of time.</param>
/// <param name="Step">The step in which its results are reported.</param>
internal sealed record AnalyzedSeries(
    Analyte Analyte,
    ImmutableArray<ResultRow[]> Specimens,
    double Step
)
{
    private static readonly Comparison<ResultRow> s_byTime = (first, second) =>
        Delay(first).CompareTo(Delay(second)) is not 0 and var delays ? delays
        : Nullable.Compare(first.TestedAt, second.TestedAt) is not 0 and var times ? times
        : first.SourceRow.CompareTo(second.SourceRow);

    /// <summary>Its series, one a specimen.</summary>
    public ImmutableArray<ResultSeries> Series { get; } = ResultSeries.Of(Specimens);

    /// <summary>Those of every analyte with numbers; of a ratio only where what it is computed from has no results.</summary>
    public static ImmutableArray<AnalyzedSeries> Of(StudyInputs inputs)
    {
        var rows = inputs.Results.ToLookup(row => row.Analyte);
        return
        [
            .. inputs
                .Protocol.Analytes.Where(analyte =>
                    !analyte.IsQualitative
                    && rows[analyte.Id].Any()
                    && !(analyte.RatioOf is { } time && rows[time].Any())
                )
                .Select(analyte => new AnalyzedSeries(
                    analyte,
                    [.. rows[analyte.Id].GroupBy(row => row.Specimen).Select(InOrder)],
                    ReportingStep.Of(
                        analyte,
                        rows[analyte.Id]
                            .Select(row => row.Result)
                            .OfType<MeasuredResult>()
                            .Select(result => result.Value)
                    )
                )),
        ];
    }

    private static ResultRow[] InOrder(IEnumerable<ResultRow> rows)
    {
        ResultRow[] ordered = [.. rows];
        Array.Sort(ordered, s_byTime);
        return ordered;
    }

    private static TimeSpan Delay(ResultRow row) => row.Occasion.TimePoint?.Delay ?? TimeSpan.Zero;
}
