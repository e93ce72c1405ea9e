namespace StabilityStudy.Core.Analysis;

/// <summary>The series of one analyte that measures by itself.</summary>
/// <param name="Analyte">The analyte.</param>
/// <param name="Series">Its series, one a specimen.</param>
/// <param name="Step">The step in which its results are reported.</param>
internal sealed record AnalyzedSeries(
    Analyte Analyte,
    ImmutableArray<ResultSeries> Series,
    double Step
)
{
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
                    ResultSeries.Of(rows[analyte.Id]),
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
}
