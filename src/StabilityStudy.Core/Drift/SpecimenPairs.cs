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
        var numbers = new Numbering<string>(
            cells.Select(pairs => pairs.Length).DefaultIfEmpty().Max()
        );
        var numbered = cells.Map(pairs => pairs.Map(pair => numbers.Of(pair.Pair.Specimen)));
        var counts = new int[numbers.Count];
        foreach (var number in numbered.SelectMany(cell => cell))
        {
            counts[number]++;
        }

        var own = Array.ConvertAll(counts, ImmutableArray.CreateBuilder<TimedPair>);
        foreach (var (pairs, of) in cells.Zip(numbered))
        {
            for (var i = 0; i < pairs.Length; i++)
            {
                own[of[i]].Add(pairs[i]);
            }
        }

        var codes = Array.ConvertAll(own, pairs => pairs[0].Pair.Specimen);
        Array.Sort(codes, own, StringComparer.Ordinal);
        return new([.. own.Select(pairs => pairs.MoveToImmutable())]);
    }

    /// <summary>The specimens that are wanted; these where all are.</summary>
    public SpecimenPairs Where(Func<ImmutableArray<TimedPair>, bool> wanted)
    {
        var kept = All.Keep(wanted);
        return kept.Length == All.Length ? this : new(kept);
    }
}
