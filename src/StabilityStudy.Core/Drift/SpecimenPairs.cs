using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Drift;

/// <summary>The timed pairs of a sequence by specimen, in the order of the codes.</summary>
internal sealed class SpecimenPairs
{
    // Found at the first question; several fits ask.
    private ImmutableArray<Clustering> _clusterings;

    private SpecimenPairs(ImmutableArray<ImmutableArray<TimedPair>> all) => All = all;

    /// <summary>The pairs of each specimen, by ascending delay.</summary>
    public ImmutableArray<ImmutableArray<TimedPair>> All { get; }

    /// <summary>What specimens share: days, baseline runs and persons, and at each delay its runs.</summary>
    public ImmutableArray<Clustering> Clusterings
    {
        get
        {
            if (_clusterings.IsDefault)
            {
                _clusterings =
                [
                    .. SharedErrors.OfBaselines(All.Map(pairs => pairs[0].Pair)),
                    .. Enumerable
                        .Range(0, All.Select(pairs => pairs.Length).DefaultIfEmpty().Max())
                        .Select(i =>
                            SharedErrors.DelayedRunsOf(
                                All.Map(pairs => pairs[Math.Min(i, pairs.Length - 1)].Pair)
                            )
                        ),
                ];
            }

            return _clusterings;
        }
    }

    /// <summary>Puts the pairs of time points together.</summary>
    /// <param name="cells">The time points, ascending.</param>
    public static SpecimenPairs Of(ImmutableArray<ImmutableArray<TimedPair>> cells)
    {
        var pairsOf = new Dictionary<string, List<TimedPair>>(
            cells.Select(pairs => pairs.Length).DefaultIfEmpty().Max(),
            StringComparer.Ordinal
        );
        foreach (var pairs in cells)
        {
            foreach (var pair in pairs)
            {
                ref var own = ref CollectionsMarshal.GetValueRefOrAddDefault(
                    pairsOf,
                    pair.Pair.Specimen,
                    out _
                );
                own ??= new(cells.Length);
                own.Add(pair);
            }
        }

        var codes = pairsOf.Keys.ToArray();
        Array.Sort(codes, StringComparer.Ordinal);
        return new(
            ImmutableArray.Create(codes, 0, codes.Length).Map(code => pairsOf[code].ToImmutableArray())
        );
    }

    /// <summary>The specimens that are wanted; these where all are.</summary>
    public SpecimenPairs Where(Func<ImmutableArray<TimedPair>, bool> wanted)
    {
        var kept = All.Keep(wanted);
        return kept.Length == All.Length ? this : new(kept);
    }
}
