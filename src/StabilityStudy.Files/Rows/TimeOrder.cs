namespace StabilityStudy.Files.Rows;

/// <summary>Checks that a step comes after the one before it, and not absurdly later.</summary>
internal static class TimeOrder
{
    /// <summary>More than a year between two steps is a wrong year, unless a longer delay is planned.</summary>
    public static readonly TimeSpan LongestUsual = TimeSpan.FromDays(400);

    /// <summary>Raises a query when <paramref name="later"/> lies before <paramref name="earlier"/>, or too long after it.</summary>
    public static void Check(
        string file,
        int line,
        (string Name, DateTimeOffset? Time) earlier,
        (string Name, DateTimeOffset? Time) later,
        TimeSpan longest,
        QueryList queries
    )
    {
        if (earlier.Time is not { } first || later.Time is not { } second)
        {
            return;
        }

        if (second < first)
        {
            queries.Add(
                RowQueries.TimesOutOfOrder,
                new QuerySource(file, line, later.Name),
                StrictTime.Write(second),
                $"\"{later.Name}\" lies before \"{earlier.Name}\" ({StrictTime.Write(first)})."
            );
        }
        else if (second - first > longest)
        {
            queries.Add(
                RowQueries.TimesTooFarApart,
                new QuerySource(file, line, later.Name),
                StrictTime.Write(second),
                FormattableString.Invariant(
                    $"\"{later.Name}\" lies {(second - first).TotalDays:0} days after \"{earlier.Name}\"."
                )
            );
        }
    }
}
