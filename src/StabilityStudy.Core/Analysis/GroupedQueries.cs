namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Many queries of one kind about the pairs of a cell, said once: a page of the same sentence hides the one that
/// differs. Every pair with its reason stays in the list of pairs.
/// </summary>
internal static class GroupedQueries
{
    private const int MostSingle = 5;

    /// <summary>The queries, those of one code together when there are more than five; documented decisions stay single.</summary>
    /// <param name="key">The cell.</param>
    /// <param name="found">The pairs about which something is asked, and what.</param>
    /// <param name="query">The query about one of them.</param>
    public static IEnumerable<DataQuery> Of(
        CellKey key,
        IEnumerable<(QueryKind Kind, PairRecord Pair)> found,
        Func<QueryKind, PairRecord, DataQuery> query
    ) =>
        found
            .GroupBy(item => item.Kind, item => item.Pair)
            .SelectMany(same =>
                same.Key == PairQueries.PairExcluded || same.Count() <= MostSingle
                    ? same.Select(pair => query(same.Key, pair))
                    : [Together(key, [.. same], query(same.Key, same.First()))]
            );

    private static DataQuery Together(CellKey key, ImmutableArray<PairRecord> same, DataQuery first)
    {
        var codes = string.Join(", ", same.Take(MostSingle).Select(pair => pair.Specimen));
        return first with
        {
            Observed = "",
            Specimen = null,
            Scope = QueryScope.Of(key),
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"{same.Length} specimens, {codes} and {same.Length - MostSingle} more (all are in the list of pairs). The first of them: {first.Message}"
            ),
        };
    }
}
