using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks control results against each other and against the runs of the results.</summary>
internal static class ControlChecks
{
    /// <summary>Checks the rows, and drops those that stand twice.</summary>
    /// <returns>The rows that are used.</returns>
    public static ImmutableArray<ControlRow> Check(
        RowTable<ControlRow> controls,
        ImmutableArray<ResultRow> results,
        QueryList queries
    )
    {
        var first = new Dictionary<ControlKey, ControlRow>(controls.Rows.Length);
        var used = ImmutableArray.CreateBuilder<ControlRow>(controls.Rows.Length);
        foreach (var row in controls.Rows)
        {
            if (first.TryAdd(ControlKey.Of(row), row))
            {
                used.Add(row);
                continue;
            }

            ReportTwice(controls.FileName, first[ControlKey.Of(row)], row, queries);
        }

        // A result that could not be read may be the one that names the run.
        if (queries.StopCount == 0)
        {
            CheckRuns(controls, results, queries);
        }

        return used.DrainToImmutable();
    }

    /// <summary>Which control result a row gives, in words.</summary>
    public static string KeyOf(ControlRow row) =>
        $"{row.Analyte} of the control \"{row.Control}\" in the run \"{row.Run}\" at this time";

    private static void ReportTwice(
        string file,
        ControlRow first,
        ControlRow row,
        QueryList queries
    )
    {
        var isSame = first == row with { SourceRow = first.SourceRow };
        var key = KeyOf(row);
        var source = new QuerySource(file, row.SourceRow, null);
        var line = first.SourceRow.ToString(CultureInfo.InvariantCulture);
        if (isSame)
        {
            queries.AddOwn(RowQueries.DuplicateRow, source, row.Result.Text, key, line);
            return;
        }

        queries.Add(
            RowQueries.ConflictingRows,
            source,
            row.Result.Text,
            $"{key} is already on line {line}, with other content.",
            "Keep the true one, or correct the time of one."
        );
    }

    private static void CheckRuns(
        RowTable<ControlRow> controls,
        ImmutableArray<ResultRow> results,
        QueryList queries
    )
    {
        var runs = new HashSet<string>(StringComparer.Ordinal);
        var last = "";
        foreach (var row in results)
        {
            if (row.Run != last)
            {
                last = row.Run;
                runs.Add(last);
            }
        }

        runs.Remove("");
        if (runs.Count == 0)
        {
            return;
        }

        foreach (var row in controls.Rows.Where(row => !runs.Contains(row.Run)))
        {
            queries.Add(
                RowQueries.ControlRunUnknown,
                new QuerySource(controls.FileName, row.SourceRow, ControlColumns.Run.Name),
                row.Run,
                $"No result names the run \"{row.Run}\".{NearestWord.Question(row.Run, runs.Order(StringComparer.Ordinal))}"
            );
        }
    }

    private readonly record struct ControlKey(
        string Control,
        string Analyte,
        string Run,
        DateTimeOffset TestedAt
    )
    {
        public static ControlKey Of(ControlRow row) =>
            new(row.Control, row.Analyte, row.Run, row.TestedAt);
    }
}
