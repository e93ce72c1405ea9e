using StabilityStudy.Core.Notices;

namespace StabilityStudy.Reporting.Report.Notices;

/// <summary>What a notice says, in words.</summary>
public static class NoticeWords
{
    private const int MostNames = 3;

    /// <summary>The title of a notice.</summary>
    public static string Title(NoticeKind kind) =>
        kind switch
        {
            NoticeKind.Withdrawn => "Withdrawal of approved windows",
            NoticeKind.EndedByNewDirector => "Approved windows ended by a new director",
            NoticeKind.Reviewed => "Approved windows reviewed, unchanged",
            NoticeKind.Adopted => "Approved windows adopted by a new director",
            NoticeKind.StudyEnded => "Study ended without a conclusion",
        };

    /// <summary>What the signature on a notice means.</summary>
    public static string Meaning(NoticeKind kind) =>
        kind switch
        {
            NoticeKind.Withdrawn => "withdraws these windows",
            NoticeKind.EndedByNewDirector => "as the new director ends these windows",
            NoticeKind.Reviewed => "has reviewed these windows and leaves them unchanged",
            NoticeKind.Adopted => "as the new director adopts these windows",
            NoticeKind.StudyEnded => "ends this study without a conclusion",
        };

    /// <summary>What a notice is about: names of reports, or the code of a study.</summary>
    public static string Subject(Notice notice)
    {
        ArgumentNullException.ThrowIfNull(notice);
        return notice.Study is { } study ? $"{study.Code} · version {study.Version}"
            : notice.Reports.Length <= MostNames
                ? string.Join(" · ", notice.Reports.Select(report => report.Name))
            : string.Join(" · ", notice.Reports.Take(MostNames - 1).Select(report => report.Name))
                + $" and {NumberText.Count(notice.Reports.Length - MostNames + 1)} more";
    }

    /// <summary>What a notice says in one paragraph: what is decided, and why.</summary>
    public static string Headline(Notice notice)
    {
        ArgumentNullException.ThrowIfNull(notice);
        var windows = notice.Reports.SelectMany(report =>
            report.Windows.Select(window =>
                $"{window.Analyte}, {window.GroupName}, {window.Storage}, {Time(window.Window)} ({report.Name})"
            )
        );
        return $"{Decision(notice).Replace("below ", "", StringComparison.Ordinal)} {(notice.Reports.IsEmpty ? "" : $"Windows: {string.Join("; ", windows)}. ")}Reason: {notice.Reason}";
    }

    internal static string Decision(Notice notice) =>
        notice.Kind switch
        {
            NoticeKind.Withdrawn =>
                $"From {NumberText.Day(notice.From)} on, the windows below are withdrawn.",
            NoticeKind.EndedByNewDirector =>
                $"From {NumberText.Day(notice.From)} on, the windows below are no longer in force: the new director, {notice.By}, ends them.",
            NoticeKind.Reviewed =>
                $"The windows below were reviewed and stay unchanged. They are to be reviewed next by {NumberText.Day(notice.Review)}.",
            NoticeKind.Adopted =>
                $"The windows below stay in force: the new director, {notice.By}, adopts them."
                    + (
                        notice.Review is { } review
                            ? $" They are to be reviewed next by {NumberText.Day(review)}."
                            : " The day of their review stays as it was."
                    ),
            NoticeKind.StudyEnded =>
                $"Study {notice.Study?.Code} is ended without a conclusion. No window follows from it.",
        };

    internal static string Consequence(Notice notice) =>
        notice.Kind switch
        {
            NoticeKind.Withdrawn or NoticeKind.EndedByNewDirector =>
                "From that day on specimens older than what stays are not tested. Bench cards, procedures and rules in the laboratory information system that state a withdrawn window are taken out of use. A report that these windows replaced does not come back into force."
                    + (
                        notice.LooksBack
                            ? ""
                            : " Results reported under these windows are not looked at again."
                    ),
            NoticeKind.Reviewed or NoticeKind.Adopted =>
                "This counts from the day of the signature on. It makes no window longer and puts none into force that is not in force by its report.",
            NoticeKind.StudyEnded =>
                "Today's rules stay as they are. Files and record of the study are kept. A new study of the same question has its own protocol, and states this one.",
        };

    internal static string Looks(EndedStudy study) =>
        study.LastLook is { } last
            ? $"Changes had been shown {(study.Looks == 1 ? "once" : NumberText.Count(study.Looks) + " times")} before this was decided, last on {NumberText.Day(last)}."
            : "By the record of the study no change had been shown to anybody before this was decided.";

    internal static string Specimens(int? number) =>
        number is { } known
            ? $"{NumberText.Count(known)} specimen{(known == 1 ? "" : "s")}"
            : "not known: the files of the study could not be read";

    internal static string Time(TimeSpan? time) =>
        time is { } known ? DurationText.FormatWindow(known) : "as stated in words";
}
