namespace StabilityStudy.Core.Analysis;

/// <summary>Independent checks of the same rows, done side by side; their queries keep the order in which the checks are named.</summary>
internal static class SideBySide
{
    public static ImmutableArray<DataQuery> Of(
        params ReadOnlySpan<Func<IEnumerable<DataQuery>>> checks
    )
    {
        var all = checks.ToArray();
        var found = new ImmutableArray<DataQuery>[all.Length];
        Parallel.For(0, all.Length, i => found[i] = [.. all[i]()]);
        return [.. found.SelectMany(queries => queries)];
    }
}
