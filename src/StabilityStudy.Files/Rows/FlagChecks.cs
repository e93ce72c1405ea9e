using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Rows;

/// <summary>Notes results that count although the instrument flagged them.</summary>
internal static class FlagChecks
{
    public static void Note(string file, ImmutableArray<ResultRow> results, QueryList queries)
    {
        var noted = results
            .Where(row => row is { Flag.Length: > 0, FlagMeaning: FlagMeaning.ReportableWithNote })
            .GroupBy(row => row.Flag, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal);
        foreach (var group in noted)
        {
            queries.Add(
                RowQueries.FlagWithNote,
                new QuerySource(file, group.Min(row => row.SourceRow), ResultColumns.Flag.Name),
                group.Key,
                group.Count() == 1
                    ? $"One result has the flag \"{group.Key}\", declared as reportable with note; it counts."
                    : FormattableString.Invariant(
                        $"{group.Count()} results have the flag \"{group.Key}\", declared as reportable with note; they count."
                    ),
                "Check the results beside it."
            );
        }
    }
}
