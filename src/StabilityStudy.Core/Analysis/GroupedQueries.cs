namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Many queries of one kind about the pairs of a cell, said once: a page of the same sentence hides the one that
/// differs. Every pair with its reason stays in the list of pairs.
/// </summary>
internal static class GroupedQueries
{
    private const int MostSingle = 5;

    /// <summary>The queries, those of one code together when there are more than five; documented decisions stay single.</summary>
    public static IEnumerable<DataQuery> Of(
        CellKey key,
        IEnumerable<(PairRecord Pair, DataQuery Query)> queries
    )
    {
        var byKind = queries.GroupBy(item => item.Query.Kind).ToImmutableArray();
        return byKind.SelectMany(same =>
            same.Key == PairQueries.PairExcluded || same.Count() <= MostSingle
                ? same.Select(item => item.Query)
                : [Together(key, [.. same])]
        );
    }

    private static DataQuery Together(
        CellKey key,
        ImmutableArray<(PairRecord Pair, DataQuery Query)> same
    )
    {
        var first = same[0].Query;
        var codes = string.Join(", ", same.Take(MostSingle).Select(item => item.Pair.Specimen));
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
