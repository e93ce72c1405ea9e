using StabilityStudy.Core.Notices;
using StabilityStudy.Files.Locking;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Notices;

/// <summary>The keys of notice.toml. The program writes them.</summary>
internal static class NoticeKeys
{
    private const int LongestName = 80;
    private const int LongestReason = 600;

    public static readonly KeyTable Table = new();

    public static readonly WordSet<NoticeKind> Kinds = new(
        ("withdrawn", NoticeKind.Withdrawn),
        ("ended by a new director", NoticeKind.EndedByNewDirector),
        ("reviewed, unchanged", NoticeKind.Reviewed),
        ("adopted by a new director", NoticeKind.Adopted),
        ("study ended without a conclusion", NoticeKind.StudyEnded)
    );

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Table);
    public static readonly Key<NoticeKind> Kind = Table.Add("kind", Required, Word(Kinds), "what the notice does", "\"withdrawn\"");
    public static readonly Key<string> By = Table.Add("by", Required, TextUpTo(LongestName), "printed name of the person who decides and signs", "\"Medical Director One\"");
    public static readonly Key<string> Role = Table.Add("role", Required, TextUpTo(LongestName), "the role in which that person signs", "\"approver\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, TextUpTo(LongestReason), "why, or after which review", "\"external quality control showed a shift\"");
    public static readonly Key<DateOnly?> From = Table.Add("from", Depends, Date.OrNone(), "first day on which the windows are no longer in force; where windows are taken away", "\"2026-06-10\"");
    public static readonly Key<DateOnly?> Review = Table.Add("review", Depends, Date.OrNone(), "day by which the windows are to be reviewed next; needed after a review, possible after an adoption", "\"2028-03-31\"");
    public static readonly Key<bool> LooksBack = Table.Add("look_back", Depends, Flag, "whether results reported under the windows are to be looked at again; where windows are taken away", "true");
    public static readonly TableKey Reports = Table.AddTables("report", Depends, NoticedReportKeys.Table, "the reports that the notice is about; all but a study that is ended have one", "[[report]]");
    public static readonly TableKey Study = Table.AddTable("study", Depends, EndedStudyKeys.Table, "the study that is ended, as it stood then", "{ code = \"WB-RT-12\" }");
    // csharpier-ignore-end
}

/// <summary>The keys of a report that a notice is about.</summary>
internal static class NoticedReportKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Code = Table.Add("code", Required, Text, "code of the study", "\"WB-RT-12\"");
    public static readonly Key<string> InputDigest = Table.Add("inputs", Required, DigestForm.Sha256, "digest of the inputs of the report", DigestForm.Example);
    public static readonly Key<string> FileSha256 = Table.Add("file_sha256", Required, DigestForm.Sha256, "SHA-256 of the signed file as it was when the notice was made", DigestForm.Example);
    public static readonly Key<string> DecidedBy = Table.Add("decided_by", Required, Text, "who decided on the report", "\"Medical Director One\"");
    public static readonly TableKey Windows = Table.AddTables("window", Required, NoticedWindowKeys.Table, "the windows of the report that the notice is about", "[{ analyte = \"aPTT\", window = \"8 h\" }]");
    // csharpier-ignore-end
}

/// <summary>The keys of a window that a notice is about.</summary>
internal static class NoticedWindowKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Analyte = Table.Add("analyte", Required, Text, "code of the analyte", "\"aPTT\"");
    public static readonly Key<string> Group = Table.Add("group", Required, Text, "code of the patient group", "\"none\"");
    public static readonly Key<string> GroupName = Table.Add("group_name", Required, Text, "its name", "\"No anticoagulant\"");
    public static readonly Key<string> Storage = Table.Add("storage", Required, Text, "code of the storage", "\"wb-rt\"");
    public static readonly Key<string> StorageWords = Table.Add("storage_words", Required, Text, "the storage in words", "\"whole blood, closed, 18 to 25 °C\"");
    public static readonly Key<ImmutableArray<string>> Instruments = Table.Add("instruments", Optional, Texts, "instruments for which the window held, as far as recorded", "[\"AN1\"]");
    public static readonly Key<ImmutableArray<string>> Lots = Table.Add("lots", Optional, Texts, "reagent lots for which it held, as far as recorded", "[\"R-2601\"]");
    public static readonly Key<TimeSpan> Today = Table.Add("today", Required, Duration, "what today's rule allows", "\"4 h\"");
    public static readonly Key<TimeSpan?> Window = Table.Add("window", Optional, Duration.OrNone(), "the approved window; left out where the decision is a text", "\"8 h\"");
    public static readonly Key<TimeSpan?> Remaining = Table.Add("remaining", Optional, Duration.OrNone(), "the shorter window that stays; today's rule when not given", "\"6 h\"");
    public static readonly Key<ImmutableArray<TimeSpan>> TimePoints = Table.Add("time_points", Optional, Durations, "time points of the study between what stays and the window", "[\"8 h\"]");
    public static readonly Key<DateOnly> InForceFrom = Table.Add("in_force_from", Required, Date, "first day on which the window was in force", "\"2026-04-01\"");
    // csharpier-ignore-end
}

/// <summary>The keys of a study that is ended without a conclusion.</summary>
internal static class EndedStudyKeys
{
    private const int Most = 1_000_000;

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Code = Table.Add("code", Required, Text, "code of the study", "\"WB-RT-12\"");
    public static readonly Key<string> Version = Table.Add("version", Required, Text, "version of its protocol", "\"2\"");
    public static readonly Key<string> ProtocolSha256 = Table.Add("protocol_sha256", Required, DigestForm.Sha256, "SHA-256 of the protocol that was locked last", DigestForm.Example);
    public static readonly Key<int> LockNumber = Table.Add("lock", Required, Whole(1, Most), "number of that lock", "1");
    public static readonly Key<DateTimeOffset> LockedAt = Table.Add("locked_at", Required, LockKeys.Moment, "when it was locked", "\"2026-02-27T10:00:00-05:00\"");
    public static readonly Key<string?> LockLineSha256 = Table.Add("lock_line_sha256", Optional, DigestForm.Sha256.OrNothing(), "SHA-256 of the line of record.jsonl about that lock", DigestForm.Example);
    public static readonly Key<int> Planned = Table.Add("planned", Required, Whole(0, Most), "planned number of specimens", "80");
    public static readonly Key<int?> Collected = Table.Add("collected", Optional, Whole(0, Most).OrNone(), "specimens that had been collected; left out where the files of the study could not be read", "32");
    public static readonly Key<int?> Tested = Table.Add("tested", Optional, Whole(0, Most).OrNone(), "specimens of which something had been tested", "30");
    public static readonly Key<int> Looks = Table.Add("looks", Required, Whole(0, Most), "how often changes had been shown, by the record of the study", "0");
    public static readonly Key<DateOnly?> LastLook = Table.Add("last_look", Depends, Date.OrNone(), "day of the last look; where there was one", "\"2026-03-20\"");
    // csharpier-ignore-end
}
