namespace StabilityStudy.Core.Pairing;

/// <summary>
/// The planned number of specimens, in the order of collection. Who could collect until the figures look good could
/// support any window, so at most the planned number counts; a reserve specimen fills only a place that stayed free for
/// a reason that says nothing of the change.
/// </summary>
internal static class PlannedPlaces
{
    private static readonly Comparison<PairRecord> s_byCollection = (one, other) =>
        one.CollectedAt.CompareTo(other.CollectedAt) is not 0 and var order
            ? order
            : string.CompareOrdinal(one.Specimen, other.Specimen);

    /// <summary>
    /// Whether a specimen leaves its place to a reserve: it has no valid baseline, its delayed tube was not drawn, or a run that no control vouches for was left out with it.
    /// Nothing that became of a delayed tube is among the reasons, because that is what is to be found out.
    /// </summary>
    public static bool LeavesPlaceFree(PairRecord pair) =>
        !pair.HasValidBaseline || pair.Status is PairStatus.NotDrawn or PairStatus.RunNotInControl;

    /// <summary>Marks the specimens collected after the last place was taken.</summary>
    /// <param name="pairs">The specimens of a cell.</param>
    /// <param name="placesOf">Which places a specimen takes one of: those of the group, or of its instrument.</param>
    /// <param name="plannedAt">The number planned when a specimen was collected: never above today's.</param>
    /// <returns>The same specimens in the same order.</returns>
    public static ImmutableArray<PairRecord> Mark(
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, string> placesOf,
        Func<PairRecord, int> plannedAt
    )
    {
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        var beyond = new HashSet<string>();
        foreach (var pair in InOrder(pairs.Keep(pair => pair.Status != PairStatus.AddedAfterLook)))
        {
            var places = placesOf(pair);
            var before = taken.GetValueOrDefault(places);
            if (before >= plannedAt(pair))
            {
                beyond.Add(pair.Specimen);
            }
            else if (!LeavesPlaceFree(pair))
            {
                taken[places] = before + 1;
            }
        }

        if (beyond.Count == 0)
        {
            return pairs;
        }

        return pairs.Map(pair =>
            beyond.Contains(pair.Specimen)
                ? pair with
                {
                    Status = PairStatus.BeyondPlanned,
                    Reason = "collected when the planned number was complete",
                }
                : pair
        );
    }

    private static ImmutableArray<PairRecord> InOrder(ImmutableArray<PairRecord> pairs)
    {
        for (var i = 1; i < pairs.Length; i++)
        {
            if (s_byCollection(pairs[i - 1], pairs[i]) > 0)
            {
                return pairs.Sort(s_byCollection);
            }
        }

        return pairs;
    }
}
