namespace StabilityStudy.Core.Pairing;

/// <summary>
/// The planned number of specimens, in the order of collection. Who could collect until the figures look good could
/// support any window, so at most the planned number counts; a reserve specimen fills only a place that stayed free for
/// a reason that says nothing of the change.
/// </summary>
internal static class PlannedPlaces
{
    /// <summary>
    /// Whether a specimen leaves its place to a reserve: it has no valid baseline, its delayed tube was not drawn, or a run that no control vouches for was left out with it.
    /// Nothing that became of a delayed tube is among the reasons, because that is what is to be found out.
    /// </summary>
    public static bool LeavesPlaceFree(PairRecord pair) =>
        !pair.HasValidBaseline || pair.Status is PairStatus.NotDrawn or PairStatus.RunNotInControl;

    /// <summary>Marks the specimens collected after the last place was taken.</summary>
    /// <param name="pairs">The specimens of a cell.</param>
    /// <param name="planned">The planned number.</param>
    /// <returns>The same specimens in the same order.</returns>
    public static ImmutableArray<PairRecord> Mark(ImmutableArray<PairRecord> pairs, int planned)
    {
        if (pairs.Length <= planned)
        {
            return pairs;
        }

        var taken = 0;
        var beyond = new HashSet<string>();
        foreach (
            var pair in pairs
                .OrderBy(pair => pair.CollectedAt)
                .ThenBy(pair => pair.Specimen, StringComparer.Ordinal)
        )
        {
            if (taken == planned)
            {
                beyond.Add(pair.Specimen);
            }
            else if (!LeavesPlaceFree(pair))
            {
                taken++;
            }
        }

        return
        [
            .. pairs.Select(pair =>
                beyond.Contains(pair.Specimen)
                    ? pair with
                    {
                        Status = PairStatus.BeyondPlanned,
                        Reason = "collected when the planned number was complete",
                    }
                    : pair
            ),
        ];
    }
}
