using StabilityStudy.Core.Locking;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>What an amendment of the protocol changed.</summary>
internal static class AmendmentWords
{
    /// <summary>Whether the criteria are the same, in a sentence.</summary>
    public static string Headline(ProtocolLock amendment) => Headline(amendment.Differences);

    /// <summary>The same of what differs; null where that cannot be shown.</summary>
    public static string Headline(ImmutableArray<ProtocolDifference>? differences) =>
        differences switch
        {
            null =>
                "What it changed cannot be shown, because the copy of a version is not at hand.",
            { IsEmpty: true } =>
                "Criteria unchanged: nothing but remarks differs from the version before.",
            _ when differences.Value.All(item => item.Kind != DifferenceKind.Rule) =>
                "Criteria unchanged: only planned numbers and labels differ from the version before.",
            _ when differences.Value.Any(OfCriteria) =>
                "Criteria or limits changed against the version before.",
            _ => "Criteria and limits unchanged; other rules differ from the version before.",
        };

    /// <summary>Each difference: "group.none.specimens: 30, now 50".</summary>
    public static IEnumerable<string> Lines(ProtocolLock amendment) =>
        (amendment.Differences ?? []).Select(item =>
            (item.Before, item.After) switch
            {
                ({ } before, { } after) => $"{item.Key}: {before}, now {after}",
                (null, { } after) => $"{item.Key}: new, {after}",
                ({ } before, null) => $"{item.Key}: {before}, taken away",
                (null, null) => item.Key,
            }
        );

    private static bool OfCriteria(ProtocolDifference difference) =>
        difference.Key.StartsWith("criterion", StringComparison.Ordinal)
        || difference.Key.StartsWith("limit", StringComparison.Ordinal);
}
