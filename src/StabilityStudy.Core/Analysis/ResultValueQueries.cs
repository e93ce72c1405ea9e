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
        foreach (var row in inputs.Results)
        {
            if (
                row.Result is not MeasuredResult { Value: var value }
                || !analytes.TryGetValue(row.Analyte, out var analyte)
            )
            {
                continue;
            }

            if (value <= 0)
            {
                yield return NotPositive(row);
            }
            else if (
                analyte.MeasuringInterval is { } interval
                && (value < interval.Lowest || value > interval.Highest)
            )
            {
                yield return Beyond(row, value > interval.Highest, interval, analyte.ShownUnit);
            }
        }
    }

    private static DataQuery NotPositive(ResultRow row) =>
        new(
            ResultNotPositive,
            DataFiles.ResultsAt(row.SourceRow, "result"),
            row.Result.Text,
            $"{PlaceOf(row)}: a result is above zero.",
            "Correct the result, write it as reported (<0.10) or give the reason why there is none."
        );

    private static DataQuery Beyond(
        ResultRow row,
        bool isAbove,
        MeasuringInterval interval,
        string unit
    ) =>
        new(
            NumberBeyondMeasuringInterval,
            DataFiles.ResultsAt(row.SourceRow, "result"),
            row.Result.Text,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{PlaceOf(row)}: a plain number outside the measuring interval from {interval.Lowest} to {interval.Highest} {unit}; it counts as beyond its nearer end."
            ),
            string.Create(
                CultureInfo.InvariantCulture,
                $"Is the decimal point right? If the analyzer reported beyond its range write {(isAbove ? '>' : '<')}{(isAbove ? interval.Highest : interval.Lowest)}."
            )
        )
        {
            Specimen = new(row.Specimen, row.Occasion.TimePoint),
        };

    private static string PlaceOf(ResultRow row) =>
        $"{row.Analyte}, specimen {row.Specimen} at {row.Occasion}";
}
