namespace StabilityStudy.Files.Recording;

/// <summary>A decision that the record of a study holds.</summary>
/// <param name="At">When it was signed.</param>
/// <param name="By">By whom.</param>
/// <param name="Words">The decision in words.</param>
public sealed record RecordedDecision(DateTimeOffset At, string By, string Words)
{
    internal const string Property = "decision";

    /// <summary>The newest decision; null where there is none. A line that cannot be read is passed over: that the chain is broken is a query of its own.</summary>
    /// <param name="record">Content of record.jsonl.</param>
    public static RecordedDecision? Newest(ReadOnlyMemory<byte> record) =>
        StudyRecord.Lines(record).Select(Read).LastOrDefault(decision => decision is not null);

    private static RecordedDecision? Read(ReadOnlyMemory<byte> line) =>
        StudyRecord.Read(
            line,
            root =>
                root.TryGetProperty(Property, out var decision)
                && decision.GetString() is { Length: > 0 } words
                    ? new RecordedDecision(
                        root.GetProperty("at").GetDateTimeOffset(),
                        root.GetProperty("by").GetString() ?? "",
                        words
                    )
                    : null
        );
}
