namespace StabilityStudy.Core.Analysis;

/// <summary>Independent checks of the same rows, done side by side; their queries keep the order in which the checks are named.</summary>
internal static class SideBySide
{
    // The queries are put together outside the parallel part: SelectMany inside it cannot become native code.
    public static ImmutableArray<DataQuery> Of(
        params ReadOnlySpan<Func<IEnumerable<DataQuery>>> checks
    ) =>
        [
            .. checks
                .ToImmutableArray()
                .AsParallel()
                .AsOrdered()
                .Select(check => check().ToImmutableArray())
                .AsEnumerable()
                .SelectMany(found => found),
        ];
}
