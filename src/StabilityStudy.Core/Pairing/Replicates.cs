using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Which of several results of a draw at one time counts: the first valid ones, as many as the protocol plans. Later
/// results stay listed and are never chosen because they agree better.
/// </summary>
internal static class Replicates
{
    /// <summary>The row that stands for the draw at this time; null when there is no row.</summary>
    /// <param name="draw">The draw.</param>
    /// <param name="occasion">Baseline or planned delay.</param>
    /// <param name="planned">Results to average: 1 or 2.</param>
    /// <param name="queries">Receives a query for each result that is not used.</param>
    public static ResultRow? Choose(
        Draw draw,
        TestOccasion occasion,
        int planned,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var rows = draw
            .Results.Where(row => row.Occasion == occasion)
            .OrderBy(row => row.Replicate)
            .ThenBy(row => row.TestedAt ?? DateTimeOffset.MaxValue)
            .ThenBy(row => row.Tube, StringComparer.Ordinal)
            .ToImmutableArray();
        if (rows.IsEmpty)
        {
            return null;
        }

        var valid = rows.Where(IsValid).Take(planned).ToImmutableArray();
        foreach (var row in rows.Where(row => rows.Length > planned && !valid.Contains(row)))
        {
            queries.Add(NotUsed(row));
        }

        return valid.IsEmpty ? rows[0]
            : valid.Length < planned || planned == 1 ? valid[0]
            : valid[0] with { Result = Mean(valid) };
    }

    private static bool IsValid(ResultRow row) =>
        row.Result is not MissingResult && row.Flag.Length == 0;

    private static ReportedResult Mean(ImmutableArray<ResultRow> rows)
    {
        if (rows.FirstOrDefault(row => row.Result is CensoredResult) is { } beyond)
        {
            return beyond.Result;
        }

        var sum = rows.Sum(row => ((MeasuredResult)row.Result).Value);
        var text = string.Join(" and ", rows.Select(row => row.Result.Text));
        return new MeasuredResult("mean of " + text, sum / rows.Length);
    }

    private static DataQuery NotUsed(ResultRow row) =>
        new(
            "repeat-result-not-used",
            Severity.Attention,
            DataFiles.ResultsAt(row.SourceRow, "result"),
            row.Result.Text,
            $"Specimen {row.Specimen} has more results at {row.Occasion} than the protocol plans; the first valid result counts.",
            "State in a deviation why the tube was tested again."
        );
}
