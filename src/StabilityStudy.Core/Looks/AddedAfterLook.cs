namespace StabilityStudy.Core.Looks;

/// <summary>
/// Specimens that were added after the data had been looked at. Who adds specimens until the figures look good finds
/// support in any data, so they are shown and not counted, unless the protocol planned to look so often.
/// </summary>
internal static class AddedAfterLook
{
    /// <summary>Marks the specimens that came after more looks than the protocol allows before them.</summary>
    /// <param name="pairs">The specimens of a cell.</param>
    /// <param name="key">The cell.</param>
    /// <param name="looks">The earlier looks.</param>
    /// <param name="allowed">How many looks were planned, this one among them.</param>
    public static ImmutableArray<PairRecord> Mark(
        ImmutableArray<PairRecord> pairs,
        CellKey key,
        ImmutableArray<EarlierLook> looks,
        int allowed
    )
    {
        var extents = Extents(key, looks);
        return extents.IsEmpty
            ? pairs
            :
            [
                .. pairs.Select(pair =>
                    extents.Count(extent => !extent.Specimens.Contains(pair.Specimen)) >= allowed
                        ? pair with
                        {
                            Status = PairStatus.AddedAfterLook,
                            Reason = FormattableString.Invariant(
                                $"added after the data had been looked at on {First(extents, pair.Specimen):yyyy-MM-dd}"
                            ),
                        }
                        : pair
                ),
            ];
    }

    /// <summary>The looks at different specimens: looking again at the same ones gives no new chance.</summary>
    private static ImmutableArray<(DateTimeOffset At, HashSet<string> Specimens)> Extents(
        CellKey key,
        ImmutableArray<EarlierLook> looks
    )
    {
        var extents = ImmutableArray.CreateBuilder<(DateTimeOffset, HashSet<string>)>();
        foreach (var look in looks)
        {
            if (
                look.Of(key) is { } cell
                && cell.Pairs.Select(pair => pair.Specimen).ToHashSet() is var specimens
                && !extents.Any(extent => extent.Item2.SetEquals(specimens))
            )
            {
                extents.Add((look.At, specimens));
            }
        }

        return extents.ToImmutable();
    }

    private static DateTimeOffset First(
        ImmutableArray<(DateTimeOffset At, HashSet<string> Specimens)> extents,
        string specimen
    ) => extents.First(extent => !extent.Specimens.Contains(specimen)).At;
}
