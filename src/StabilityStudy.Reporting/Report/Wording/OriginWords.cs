namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>From when a change counts, in words: a claim says it, because a window counts from collection.</summary>
internal static class OriginWords
{
    /// <summary>What times count from: "collection".</summary>
    public static string Start(TimeOrigin origin) =>
        origin == TimeOrigin.Thawing ? "thawing" : "collection";

    /// <summary>Behind "Supported to 8 h"; empty where the change counts from collection.</summary>
    public static string InHeadline(StudyProtocol protocol, Storage storage) =>
        protocol.IsSinceCollection(storage) ? ""
        : protocol.BeginsAfterBaseline(storage) ? " relative to the baseline before storage"
        : $" relative to a baseline within {DurationText.Format(protocol.BaselineWithin)}";

    /// <summary>The assumption, or what was not measured, as a sentence.</summary>
    public static string Sentence(StudyProtocol protocol, Storage storage) =>
        protocol.IsSinceCollection(storage)
            ? "The change counts from collection: each specimen's value then was computed from its own baseline delay, taking the change to grow with the logarithm of time; a course that is steeper at first is not covered."
        : protocol.BeginsAfterBaseline(storage)
            ? "The change counts from the baseline, because this storage begins after it; what happened before was not measured."
        : $"The change counts from a baseline tested within {DurationText.Format(protocol.BaselineWithin)} of {Start(protocol.TimeOrigin)}; what changed before that was not measured.";

    /// <summary>The same in brief, under a table.</summary>
    public static string InBrief(StudyAnalysis analysis)
    {
        var collected = analysis
            .Sequences.Select(sequence =>
                analysis.Protocol.IsSinceCollection(
                    analysis.Protocol.Storages.Single(item => item.Id == sequence.Storage)
                )
            )
            .Distinct()
            .ToImmutableArray();
        return collected switch
        {
            [true] =>
                "Change: from collection, computed from each specimen's own baseline delay, where that decides.",
            [false] =>
                $"Change: from the baseline test (within {DurationText.Format(analysis.Protocol.BaselineWithin)} of {Start(analysis.Protocol.TimeOrigin)}), not from {Start(analysis.Protocol.TimeOrigin)}.",
            _ =>
                "Change: from collection where storage begins at collection, else from the baseline test.",
        };
    }
}
