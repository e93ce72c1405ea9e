namespace StabilityStudy.Files.Rows;

/// <summary>Finds the tubes of results. Of tubes that stand twice it has the first.</summary>
/// <param name="tubes">The tubes that could be read.</param>
internal sealed class TubesByKey(ImmutableArray<TubeRow> tubes)
{
    private readonly Dictionary<TubeKey, TubeRow> _tubes = FirstOfEach(tubes);
    private (TubeKey Key, TubeRow? Tube) _last;

    /// <summary>The tube of a result; null where there is none. Results of one tube follow each other, so that it is mostly the tube of the row before.</summary>
    public TubeRow? Of(ResultRow row)
    {
        var key = new TubeKey(row.Specimen, row.Tube);
        if (key != _last.Key)
        {
            _last = (key, _tubes.GetValueOrDefault(key));
        }

        return _last.Tube;
    }

    /// <summary>The first of the same key, where it is another one.</summary>
    public TubeRow? OtherThan(TubeRow tube) =>
        // Nearly always each key is there once.
        _tubes.Count == tubes.Length
        || _tubes[new TubeKey(tube.Specimen, tube.Tube)] is var first
            && ReferenceEquals(first, tube)
            ? null
            : first;

    private static Dictionary<TubeKey, TubeRow> FirstOfEach(ImmutableArray<TubeRow> tubes)
    {
        var first = new Dictionary<TubeKey, TubeRow>(tubes.Length);
        foreach (var tube in tubes)
        {
            first.TryAdd(new TubeKey(tube.Specimen, tube.Tube), tube);
        }

        return first;
    }
}
