using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about files of HL7 v2 result messages. They show what a listed field holds, and never anything of another.</summary>
internal static class MessageQueries
{
    /// <summary>What rows are left aside by: the type of their message, the status of the result, the code of the analyte.</summary>
    public static readonly ImmutableArray<string> LeftBy = ["message", "status", "analyte"];

    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind NotMessages = Kinds.Add("not-messages", Stop, "a file cannot be read as HL7 v2 messages", "export the messages again as they were sent, each segment on a line");
    internal static readonly QueryKind MessageCutOff = Kinds.Add("message-cut-off", Stop, "a message, batch or file of messages ends before its end", "export the messages again, whole");
    internal static readonly QueryKind MessageNotRead = Kinds.Add("message-not-read", Stop, "a message may hold results and is of a kind that is not read", "export results as ORU^R01 messages of production");
    internal static readonly QueryKind SegmentOutOfPlace = Kinds.Add("segment-out-of-place", Stop, "a line of a message is no segment, or a segment stands where the message has no place for it", "export the messages again; a line break inside a text must be written as an escape");
    internal static readonly QueryKind FieldNotClear = Kinds.Add("field-not-clear", Stop, "a field of a message can be read in more than one way, or not at all", "see the message and what its sender documents of the field");
    internal static readonly QueryKind StatusNotDeclared = Kinds.Add("result-status-not-declared", Stop, "a result has a status other than final, and study.toml does not say what becomes of it", "say under result_status of [read.results] whether it is a result, no result, or left aside");
    internal static readonly QueryKind RejectedWithResult = Kinds.Add("rejected-with-result", Stop, "a specimen was rejected, and has a result", "read the reject reason as a flag and declare what it means");
    internal static readonly QueryKind NotTimeOfTest = Kinds.Add("not-time-of-test", Stop, "a message does not say when a result was measured", "have the sender state the time of analysis (OBX-19)");
    internal static readonly QueryKind NotAResultValue = Kinds.Add("not-a-result-value", Stop, "the value of an observation is no number, limit or word", "list the code of the observation in other_analytes, where it is no result of the study");
    internal static readonly QueryKind SentTimesDiffer = Kinds.Add("sent-times-differ", Stop, "two sources state different times of collection or receipt of one tube", "find out the true time and correct the source that is wrong; a row without the time takes that of the messages");
    internal static readonly QueryKind SettingWithoutUse = Kinds.Add("setting-without-use", Stop, "a setting describes another form of file than the one that is read", "remove it");
    internal static readonly QueryKind RowsLeftAside = Kinds.Add(
        "rows-left-aside",
        Note,
        "rows or messages were not read, because study.toml says so or because messages of their type hold no results",
        "see whether their number is as expected",
        query =>
            query.Values.Items is [var by, var what, var count] && LeftBy.Contains(by)
                ? query with { Text = LeftAsideText(by, what, count) }
                : null
    );
    // csharpier-ignore-end

    private static string LeftAsideText(string by, string what, string count) =>
        (by, count) switch
        {
            ("message", "1") => $"A message of the type {what} holds no results and was not read.",
            ("message", _) =>
                $"{count} messages of the type {what} hold no results and were not read.",
            ("status", "1") =>
                $"A result has the status \"{what}\", which study.toml leaves aside.",
            ("status", _) =>
                $"{count} results have the status \"{what}\", which study.toml leaves aside.",
            (_, "1") => $"A row has the code \"{what}\", which study.toml lists in other_analytes.",
            _ =>
                $"{count} rows have the code \"{what}\", which study.toml lists in other_analytes.",
        };
}
