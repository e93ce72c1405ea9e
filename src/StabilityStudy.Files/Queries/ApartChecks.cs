namespace StabilityStudy.Files.Queries;

/// <summary>Independent checks of the same rows, done side by side where there are many of them. Each takes its queries apart, so that they can be raised in the order that readers know.</summary>
internal static class ApartChecks
{
    private const int ManyRows = 10_000;

    /// <summary>Does the checks.</summary>
    /// <param name="rows">How many rows they go through.</param>
    /// <param name="queries">The list in which the queries will be raised.</param>
    /// <param name="checks">The checks.</param>
    /// <returns>The queries of each check.</returns>
    public static ImmutableArray<QueryList> Do(
        int rows,
        QueryList queries,
        params ImmutableArray<Action<QueryList>> checks
    )
    {
        ImmutableArray<QueryList> found = [.. checks.Select(_ => queries.Apart())];
        if (rows < ManyRows)
        {
            for (var i = 0; i < checks.Length; i++)
            {
                checks[i](found[i]);
            }
        }
        else
        {
            Parallel.For(0, checks.Length, i => checks[i](found[i]));
        }

        return found;
    }
}
