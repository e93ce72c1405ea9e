using StabilityStudy.Core.Doubts;

namespace StabilityStudy.Core.Looks;

/// <summary>What an unfinished collection, or one that went on or ended after a look, does not allow to conclude.</summary>
internal static class LookDoubts
{
    /// <summary>The doubts about a time point.</summary>
    public static IEnumerable<VerdictReason> Of(
        CellKey key,
        ImmutableArray<PairRecord> pairs,
        CollectionStanding collection,
        ImmutableArray<EarlierLook> looks,
        bool isPlannedPerInstrument
    )
    {
        if (collection.State == CollectionState.Incomplete)
        {
            yield return new CollectionNotCompleteReason(collection.Usable, collection.Planned);
        }

        var seen = looks
            .Select(look => (look.At, Cell: look.Of(key)))
            .Where(look => look.Cell is not null)
            .ToImmutableArray();
        var added = pairs.Count(pair => pair.Status == PairStatus.AddedAfterLook);
        if (added > 0)
        {
            yield return new AddedAfterLookReason(seen[0].At, added);
        }

        var counted = pairs.Count(pair =>
            pair.HasValidBaseline
            && pair.Status is not (PairStatus.AddedAfterLook or PairStatus.BeyondPlanned)
        );
        foreach (var (at, cell) in seen)
        {
            if (
                collection.State != CollectionState.Incomplete
                && cell is { State: CollectionState.Incomplete }
                && (
                    counted < cell.Planned
                    // What one instrument lacks another may have in excess.
                    || (isPlannedPerInstrument && collection.State == CollectionState.EndedEarly)
                )
            )
            {
                yield return new StoppedAfterLookReason(at, cell.Usable, cell.Planned);
                yield break;
            }
        }
    }
}
