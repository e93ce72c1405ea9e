using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Recording;

/// <summary>That the record of a study names a signed notice that ended it.</summary>
/// <param name="At">When it was signed.</param>
/// <param name="By">By whom.</param>
public sealed record RecordedEnding(DateTimeOffset At, string By)
{
    /// <summary>The newest; null where there is none.</summary>
    /// <param name="record">Content of record.jsonl.</param>
    public static RecordedEnding? Newest(ReadOnlyMemory<byte> record) =>
        StudyRecord.Lines(record).Select(Read).LastOrDefault(ending => ending is not null);

    private static RecordedEnding? Read(ReadOnlyMemory<byte> line) =>
        StudyRecord.Read(
            line,
            root =>
                root.GetProperty("action").GetString() == RecordAction.Sign
                && StudyRecord.FilesOf(root, "outputs").ContainsKey(StudyBytes.EndingName)
                    ? new RecordedEnding(
                        root.GetProperty("at").GetDateTimeOffset(),
                        root.GetProperty("by").GetString() ?? ""
                    )
                    : null
        );
}
