namespace StabilityStudy.Files.Suggestions;

/// <summary>Decides what a delivered table holds.</summary>
internal static class KindOfTable
{
    public const string Results = "results";
    public const string Specimens = "specimens";
    public const string Controls = "controls";
    public const string Pairs = "pairs";
    public const string Temperatures = "temperatures";

    /// <summary>The kind; null where nothing shows it.</summary>
    public static string? Of(ImmutableArray<ColumnProfile> columns, bool hasSeveralResults)
    {
        var names = columns
            .Select(column => HeaderWords.ColumnOf(column.Header))
            .OfType<string>()
            .ToHashSet();
        var events = columns
            .Where(column => column.IsTimes)
            .Select(column => HeaderWords.EventOf(column.Header))
            .OfType<string>()
            .ToHashSet();
        var hasResult = names.Contains("result") || hasSeveralResults;
        return hasResult && names.Contains("control") && !names.Contains("tube") ? Controls
            : hasResult ? Results
            : events.Contains("collected_at")
            || (names.Contains("fill_percent") && names.Contains("tube"))
                ? Specimens
            : columns.Any(column => HeaderWords.IsTemperature(column.Header))
            && columns.Any(column => column.IsTimes)
                ? Temperatures
            : null;
    }
}
