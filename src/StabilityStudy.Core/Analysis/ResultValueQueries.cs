namespace StabilityStudy.Core.Analysis;

/// <summary>Numbers that the method cannot have given.</summary>
internal static class ResultValueQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ResultNotPositive = Kinds.Add("result-not-positive", QueryRank.Stop, "a result of zero or less stands for a quantity that is always above zero", "correct the result, or give the reason why there is none");
    internal static readonly QueryKind NumberBeyondMeasuringInterval = Kinds.Add("number-beyond-measuring-interval", QueryRank.NotAsPlanned, "a number lies beyond the measuring interval of the protocol", "report it as < or > the limit, or correct measuring_interval before data are collected");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyInputs inputs)
    {
        var analytes = inputs.Protocol.Analytes.ToDictionary(analyte => analyte.Id);
        return inputs
            .Results.Select(row =>
                row.Result is MeasuredResult measured
                && analytes.TryGetValue(row.Analyte, out var analyte)
                    ? OfOne(row, measured.Value, analyte)
                    : null
            )
            .OfType<DataQuery>();
    }

    private static DataQuery? OfOne(ResultRow row, decimal value, Analyte analyte)
    {
        var where = DataFiles.ResultsAt(row.SourceRow, "result");
        var what = $"{analyte.Id}, specimen {row.Specimen} at {row.Occasion}";
        if (value <= 0)
        {
            return new(
                ResultNotPositive,
                where,
                row.Result.Text,
                $"{what}: a result is above zero.",
                "Correct the result, write it as reported (<0.10) or give the reason why there is none."
            );
        }

        return
            analyte.MeasuringInterval is { } interval
            && (value < interval.Lowest || value > interval.Highest)
            ? new(
                NumberBeyondMeasuringInterval,
                where,
                row.Result.Text,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{what}: a plain number outside the measuring interval from {interval.Lowest} to {interval.Highest} {analyte.ShownUnit}; it counts as beyond its nearer end."
                ),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Is the decimal point right? If the analyzer reported beyond its range write {(value > interval.Highest ? '>' : '<')}{(value > interval.Highest ? interval.Highest : interval.Lowest)}."
                )
            )
            {
                Specimen = new(row.Specimen, row.Occasion.TimePoint),
            }
            : null;
    }
}
