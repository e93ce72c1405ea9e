using System.Text;
using StabilityStudy.Core.Notices;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Files.Notices;

/// <summary>Reads and writes notice.toml, the data that a notice carries. There is one way to write a notice, so that its pages can be drawn again byte for byte.</summary>
public static class NoticeToml
{
    /// <summary>Name of the attached file.</summary>
    public const string Name = "notice.toml";

    private const int Format = 1;

    /// <summary>Reads a notice.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <returns>The notice, or the queries that stop.</returns>
    public static Outcome<Notice> Read(ReadOnlyMemory<byte> utf8)
    {
        var queries = new QueryList();
        if (TomlDocument.Read(utf8, Name, queries) is not { } entries)
        {
            return Outcome.Stopped<Notice>(queries.ToImmutable());
        }

        var root = TomlTable.Root(entries, NoticeKeys.Table, Name, queries);
        FormatNumber.Check(root, NoticeKeys.Format, Format);
        var kind = root.Read(NoticeKeys.Kind);
        var takesAway = Notice.TakesAwayWindows(kind);
        var endsStudy = kind == NoticeKind.StudyEnded;
        var notice = new Notice(
            kind,
            root.Read(NoticeKeys.By),
            root.Read(NoticeKeys.Role),
            root.Read(NoticeKeys.Reason)
        )
        {
            From = takesAway ? root.Read(NoticeKeys.From, isRequired: true) : null,
            LooksBack = takesAway && root.Read(NoticeKeys.LooksBack, isRequired: true),
            Review = kind is NoticeKind.Reviewed or NoticeKind.Adopted
                ? root.Read(NoticeKeys.Review, isRequired: kind == NoticeKind.Reviewed)
                : null,
            Reports = endsStudy
                ? []
                :
                [
                    .. root.Tables(NoticeKeys.Reports, isRequired: true)
                        .Select(table => ReadReport(table, takesAway)),
                ],
            Study = endsStudy ? ReadStudy(root.RequireTable(NoticeKeys.Study)) : null,
        };
        return queries.StopCount > 0
            ? Outcome.Stopped<Notice>(queries.ToImmutable())
            : Outcome.Of(notice, queries.ToImmutable());
    }

    /// <summary>Writes a notice.</summary>
    public static ReadOnlyMemory<byte> Write(Notice notice)
    {
        ArgumentNullException.ThrowIfNull(notice);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{NoticeKeys.Format.Name} = {Format}\n");
        Line(text, NoticeKeys.Kind, NoticeKeys.Kinds.Write(notice.Kind));
        Line(text, NoticeKeys.By, notice.By);
        Line(text, NoticeKeys.Role, notice.Role);
        Line(text, NoticeKeys.Reason, notice.Reason);
        Line(text, NoticeKeys.From, Day(notice.From));
        Line(text, NoticeKeys.Review, Day(notice.Review));
        if (notice.TakesAway)
        {
            Bare(text, NoticeKeys.LooksBack, notice.LooksBack ? "true" : "false");
        }

        foreach (var report in notice.Reports)
        {
            Append(text, report);
        }

        if (notice.Study is { } study)
        {
            Append(text, study);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static NoticedReport ReadReport(TomlTable table, bool takesAway) =>
        new(
            table.Read(NoticedReportKeys.Code),
            table.Read(NoticedReportKeys.InputDigest),
            table.Read(NoticedReportKeys.FileSha256),
            table.Read(NoticedReportKeys.DecidedBy),
            [
                .. table
                    .Tables(NoticedReportKeys.Windows)
                    .Select(window => ReadWindow(window, takesAway)),
            ]
        );

    private static NoticedWindow ReadWindow(TomlTable table, bool takesAway) =>
        new(
            table.Read(NoticedWindowKeys.Analyte),
            table.Read(NoticedWindowKeys.Group),
            table.Read(NoticedWindowKeys.GroupName),
            table.Read(NoticedWindowKeys.Storage),
            table.Read(NoticedWindowKeys.StorageWords),
            table.Read(NoticedWindowKeys.Today),
            table.Read(NoticedWindowKeys.InForceFrom)
        )
        {
            Instruments = table.Read(NoticedWindowKeys.Instruments),
            Lots = table.Read(NoticedWindowKeys.Lots),
            Window = table.Read(NoticedWindowKeys.Window),
            Remaining = takesAway ? table.Read(NoticedWindowKeys.Remaining) : null,
            TimePoints = takesAway ? table.Read(NoticedWindowKeys.TimePoints) : [],
        };

    private static EndedStudy ReadStudy(TomlTable table) =>
        new(
            table.Read(EndedStudyKeys.Code),
            table.Read(EndedStudyKeys.Version),
            table.Read(EndedStudyKeys.ProtocolSha256),
            table.Read(EndedStudyKeys.LockNumber),
            table.Read(EndedStudyKeys.LockedAt),
            table.Read(EndedStudyKeys.LockLineSha256),
            table.Read(EndedStudyKeys.Planned)
        )
        {
            Collected = table.Read(EndedStudyKeys.Collected),
            Tested = table.Read(EndedStudyKeys.Tested),
            Looks = table.Read(EndedStudyKeys.Looks),
            LastLook = table.Read(EndedStudyKeys.LastLook),
        };

    private static void Append(StringBuilder text, NoticedReport report)
    {
        text.Append("\n[[report]]\n");
        Line(text, NoticedReportKeys.Code, report.Code);
        Line(text, NoticedReportKeys.InputDigest, report.InputDigest);
        Line(text, NoticedReportKeys.FileSha256, report.FileSha256);
        Line(text, NoticedReportKeys.DecidedBy, report.DecidedBy);
        foreach (var window in report.Windows)
        {
            text.Append("\n[[report.window]]\n");
            Line(text, NoticedWindowKeys.Analyte, window.Analyte);
            Line(text, NoticedWindowKeys.Group, window.Group);
            Line(text, NoticedWindowKeys.GroupName, window.GroupName);
            Line(text, NoticedWindowKeys.Storage, window.Storage);
            Line(text, NoticedWindowKeys.StorageWords, window.StorageWords);
            List(text, NoticedWindowKeys.Instruments, window.Instruments);
            List(text, NoticedWindowKeys.Lots, window.Lots);
            Line(text, NoticedWindowKeys.Today, DurationText.Format(window.Today));
            Line(text, NoticedWindowKeys.Window, Time(window.Window));
            Line(text, NoticedWindowKeys.Remaining, Time(window.Remaining));
            List(
                text,
                NoticedWindowKeys.TimePoints,
                [.. window.TimePoints.Select(DurationText.Format)]
            );
            Line(text, NoticedWindowKeys.InForceFrom, Day(window.InForceFrom));
        }
    }

    private static void Append(StringBuilder text, EndedStudy study)
    {
        text.Append("\n[study]\n");
        Line(text, EndedStudyKeys.Code, study.Code);
        Line(text, EndedStudyKeys.Version, study.Version);
        Line(text, EndedStudyKeys.ProtocolSha256, study.ProtocolSha256);
        Bare(text, EndedStudyKeys.LockNumber, Number(study.LockNumber));
        Line(text, EndedStudyKeys.LockedAt, LockFile.Time(study.LockedAt));
        Line(text, EndedStudyKeys.LockLineSha256, study.LockLineSha256);
        Bare(text, EndedStudyKeys.Planned, Number(study.Planned));
        Bare(text, EndedStudyKeys.Collected, Number(study.Collected));
        Bare(text, EndedStudyKeys.Tested, Number(study.Tested));
        Bare(text, EndedStudyKeys.Looks, Number(study.Looks));
        Line(text, EndedStudyKeys.LastLook, Day(study.LastLook));
    }

    private static void Line(StringBuilder text, Key key, string? value) =>
        Bare(text, key, value is null ? null : TomlLiteral.Quoted(value));

    private static void List(StringBuilder text, Key key, ImmutableArray<string> values) =>
        Bare(
            text,
            key,
            values.IsEmpty ? null : $"[{string.Join(", ", values.Select(TomlLiteral.Quoted))}]"
        );

    private static void Bare(StringBuilder text, Key key, string? value)
    {
        if (value is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"{key.Name} = {value}\n");
        }
    }

    private static string? Number(int? number) => number?.ToString(CultureInfo.InvariantCulture);

    private static string? Time(TimeSpan? time) =>
        time is { } known ? DurationText.Format(known) : null;

    private static string? Day(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
