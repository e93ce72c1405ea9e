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
        var text = new TomlWriter();
        text.Bare(NoticeKeys.Format, TomlWriter.Number(Format));
        text.Line(NoticeKeys.Kind, NoticeKeys.Kinds.Write(notice.Kind));
        text.Line(NoticeKeys.By, notice.By);
        text.Line(NoticeKeys.Role, notice.Role);
        text.Line(NoticeKeys.Reason, notice.Reason);
        text.Line(NoticeKeys.From, TomlWriter.Day(notice.From));
        text.Line(NoticeKeys.Review, TomlWriter.Day(notice.Review));
        if (notice.TakesAway)
        {
            text.Bare(NoticeKeys.LooksBack, notice.LooksBack ? "true" : "false");
        }

        foreach (var report in notice.Reports)
        {
            Append(text, report);
        }

        if (notice.Study is { } study)
        {
            Append(text, study);
        }

        return text.ToUtf8();
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

    private static void Append(TomlWriter text, NoticedReport report)
    {
        text.Head("[[report]]");
        text.Line(NoticedReportKeys.Code, report.Code);
        text.Line(NoticedReportKeys.InputDigest, report.InputDigest);
        text.Line(NoticedReportKeys.FileSha256, report.FileSha256);
        text.Line(NoticedReportKeys.DecidedBy, report.DecidedBy);
        foreach (var window in report.Windows)
        {
            text.Head("[[report.window]]");
            text.Line(NoticedWindowKeys.Analyte, window.Analyte);
            text.Line(NoticedWindowKeys.Group, window.Group);
            text.Line(NoticedWindowKeys.GroupName, window.GroupName);
            text.Line(NoticedWindowKeys.Storage, window.Storage);
            text.Line(NoticedWindowKeys.StorageWords, window.StorageWords);
            text.List(NoticedWindowKeys.Instruments, window.Instruments);
            text.List(NoticedWindowKeys.Lots, window.Lots);
            text.Line(NoticedWindowKeys.Today, DurationText.Format(window.Today));
            text.Line(NoticedWindowKeys.Window, Time(window.Window));
            text.Line(NoticedWindowKeys.Remaining, Time(window.Remaining));
            text.List(
                NoticedWindowKeys.TimePoints,
                [.. window.TimePoints.Select(DurationText.Format)]
            );
            text.Line(NoticedWindowKeys.InForceFrom, TomlWriter.Day(window.InForceFrom));
        }
    }

    private static void Append(TomlWriter text, EndedStudy study)
    {
        text.Head("[study]");
        text.Line(EndedStudyKeys.Code, study.Code);
        text.Line(EndedStudyKeys.Version, study.Version);
        text.Line(EndedStudyKeys.ProtocolSha256, study.ProtocolSha256);
        text.Bare(EndedStudyKeys.LockNumber, TomlWriter.Number(study.LockNumber));
        text.Line(EndedStudyKeys.LockedAt, LockFile.Time(study.LockedAt));
        text.Line(EndedStudyKeys.LockLineSha256, study.LockLineSha256);
        text.Bare(EndedStudyKeys.Planned, TomlWriter.Number(study.Planned));
        text.Bare(EndedStudyKeys.Collected, TomlWriter.Number(study.Collected));
        text.Bare(EndedStudyKeys.Tested, TomlWriter.Number(study.Tested));
        text.Bare(EndedStudyKeys.Looks, TomlWriter.Number(study.Looks));
        text.Line(EndedStudyKeys.LastLook, TomlWriter.Day(study.LastLook));
    }

    private static string? Time(TimeSpan? time) =>
        time is { } known ? DurationText.Format(known) : null;
}
