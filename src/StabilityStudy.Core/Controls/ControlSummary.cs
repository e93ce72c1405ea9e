using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Controls;

/// <summary>Every result of one control material in the study. Description: the runs are judged one by one.</summary>
/// <param name="Analyte">Code of the analyte.</param>
/// <param name="Control">Code of the material.</param>
/// <param name="Kind">What the material is for.</param>
/// <param name="Results">Number of results.</param>
/// <param name="Runs">Number of runs that they were tested in.</param>
/// <param name="Target">Expected value, in the unit; null when not stated, or not the same in every row.</param>
/// <param name="AllowedLow">Lowest acceptable result; null when not stated, or not the same in every row.</param>
/// <param name="AllowedHigh">Highest acceptable result; null when not stated, or not the same in every row.</param>
/// <param name="Outside">Results outside the range of their own row; a class other than the expected one counts.</param>
/// <param name="Spread">Mean and standard deviation of the numbers, in the unit; refused with too few, or without spread.</param>
public sealed record ControlSummary(
    string Analyte,
    string Control,
    ControlKind Kind,
    int Results,
    int Runs,
    decimal? Target,
    decimal? AllowedLow,
    decimal? AllowedHigh,
    int Outside,
    Estimate<SpreadSummary> Spread
)
{
    /// <summary>Coefficient of variation over all runs, in percent of the mean; null where it cannot be computed.</summary>
    public double? CvPercent =>
        Spread.TryGet(out var spread) && spread.Mean > 0
            ? 100 * spread.StandardDeviation / spread.Mean
            : null;

    /// <summary>One for each material, in the order of the protocol's analytes.</summary>
    internal static ImmutableArray<ControlSummary> Of(StudyInputs inputs) =>
        [
            .. from analyte in inputs.Protocol.Analytes
            from rows in inputs
                .Controls.Where(row => row.Analyte == analyte.Id)
                .GroupBy(row => (row.Control, row.Kind))
                .OrderBy(rows => rows.Key.Kind)
                .ThenBy(rows => rows.Key.Control, StringComparer.Ordinal)
            select Of(analyte, [.. rows]),
        ];

    private static ControlSummary Of(Analyte analyte, ImmutableArray<ControlRow> rows) =>
        new(
            analyte.Id,
            rows[0].Control,
            rows[0].Kind,
            rows.Length,
            rows.Select(row => row.Run).Distinct(StringComparer.Ordinal).Count(),
            Same(rows, row => row.Target),
            Same(rows, row => row.AllowedLow),
            Same(rows, row => row.AllowedHigh),
            rows.Count(RunControls.IsOutside),
            Statistics.Location.Spread.Summarize([
                .. rows.Select(row => row.Result)
                    .OfType<MeasuredResult>()
                    .Select(result => (double)result.Value),
            ])
        );

    private static decimal? Same(
        ImmutableArray<ControlRow> rows,
        Func<ControlRow, decimal?> value
    ) => rows.Select(value).Distinct().ToArray() is [{ } only] ? only : null;
}
