using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Rows;

/// <summary>Finds results with the same key: the same content twice is used once, different content stops.</summary>
internal static class ResultDuplicates
{
    /// <summary>The rows of which each key is there once.</summary>
    public static ImmutableArray<ResultRow> Remove(RowTable<ResultRow> results, QueryList queries)
    {
        if (Ascend(results.Rows))
        {
            return results.Rows;
        }

        var first = new Dictionary<ResultKey, ResultRow>(results.Rows.Length);
        var used = ImmutableArray.CreateBuilder<ResultRow>(results.Rows.Length);
        foreach (var row in results.Rows)
        {
            if (first.TryAdd(ResultKey.Of(row), row))
            {
                used.Add(row);
                continue;
            }

            Report(results.FileName, first[ResultKey.Of(row)], row, queries);
        }

        return used.DrainToImmutable();
    }

    // Rows in the order of their keys have none of them twice.
    private static bool Ascend(ImmutableArray<ResultRow> rows)
    {
        for (var i = 1; i < rows.Length; i++)
        {
            if (CanonicalOrder.Compare(rows[i - 1], rows[i]) >= 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Which result a row gives, in words.</summary>
    public static string KeyOf(ResultRow row) =>
        $"{row.Analyte} of the tube \"{row.Tube}\" of the specimen \"{row.Specimen}\" at {row.Occasion}";

    private static void Report(string file, ResultRow first, ResultRow row, QueryList queries)
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
            FormattableString.Invariant(
                $"{key} is already on line {line}, with other content: lines {line} and {row.SourceRow}."
            ),
            "Where the test was repeated, number the results in replicate, 1 for the first, and give the reason in [[rerun]] of study.toml; a valid first result stands whatever the reason, and both stay listed. Where it is another tube, correct the codes."
        );
    }

    private readonly record struct ResultKey(
        TubeKey Tube,
        string Analyte,
        TestOccasion Occasion,
        int Replicate
    )
    {
        public static ResultKey Of(ResultRow row) =>
            new(new TubeKey(row.Specimen, row.Tube), row.Analyte, row.Occasion, row.Replicate);
    }
}
