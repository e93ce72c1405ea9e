using System.Runtime.InteropServices;

namespace StabilityStudy.Core.Analysis;

/// <summary>The results of one analyte that measures by itself.</summary>
/// <param name="Analyte">The analyte.</param>
/// <param name="Specimens">Its rows, those of a specimen together and in order of time.</param>
/// <param name="Step">The step in which its results are reported.</param>
internal sealed record AnalyzedSeries(
    Analyte Analyte,
    ImmutableArray<ReadOnlyMemory<ResultRow>> Specimens,
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
    public static ImmutableArray<AnalyzedSeries> Of(StudyRows rows) =>
        [
            .. rows
                .Inputs.Protocol.Analytes.Where(analyte =>
                    !analyte.IsQualitative
                    && !rows.Of(analyte.Id).IsEmpty
                    && !(analyte.RatioOf is { } time && !rows.Of(time).IsEmpty)
                )
                .AsParallel()
                .AsOrdered()
                .Select(analyte => new AnalyzedSeries(
                    analyte,
                    [
                        .. SpecimensOf(analyte.Id, rows)
                            .Select(specimen => rows.Of(analyte.Id, specimen))
                            .Where(results => !results.IsEmpty)
                            .Select(InOrder),
                    ],
                    ReportingStep.Of(
                        analyte,
                        MemoryMarshal
                            .ToEnumerable(rows.Of(analyte.Id))
                            .Select(row => row.Result)
                            .OfType<MeasuredResult>()
                            .Select(result => result.Value)
                    )
                )),
        ];

    /// <summary>The specimens in the order in which the analyte's results come.</summary>
    private static IEnumerable<SpecimenRows> SpecimensOf(string analyte, StudyRows rows) =>
        rows.IsInOrder
            ? rows.Specimens
            : rows
                .Inputs.Results.Where(row => row.Analyte == analyte)
                .DistinctBy(row => row.Specimen)
                .Select(row => rows.Specimen(row.Specimen))
                .OfType<SpecimenRows>();

    private static ReadOnlyMemory<ResultRow> InOrder(ReadOnlyMemory<ResultRow> results)
    {
        var rows = results.Span;
        for (var i = 1; i < rows.Length; i++)
        {
            if (s_byTime(rows[i - 1], rows[i]) > 0)
            {
                var ordered = results.ToArray();
                Array.Sort(ordered, s_byTime);
                return ordered;
            }
        }

        return results;
    }

    private static TimeSpan Delay(ResultRow row) => row.Occasion.TimePoint?.Delay ?? TimeSpan.Zero;
}
