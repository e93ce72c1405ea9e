using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Register;

/// <summary>Words for what stands in the register, the same on the screen and in its table.</summary>
public static class RegisterWords
{
    /// <summary>A standing in words, the same on the screen and in JSON.</summary>
    public static string Word(WindowStanding standing) =>
        standing switch
        {
            WindowStanding.NotTrusted => "not trusted",
            WindowStanding.NotDecided => "not decided",
            WindowStanding.Declined => "declined",
            WindowStanding.NotSupported => "not supported",
            WindowStanding.Superseded => "superseded",
            WindowStanding.InDoubt => "in doubt",
            WindowStanding.Withdrawn => "withdrawn",
            WindowStanding.EndedByNewDirector => "ended by a new director",
            WindowStanding.NotYet => "not yet in force",
            WindowStanding.PastReview => "past review",
            WindowStanding.InForce => "in force",
        };

    /// <summary>A notice beside a window.</summary>
    public static string Of(RegisteredNotice item) =>
        item.Notice.Kind switch
        {
            NoticeKind.Withdrawn or NoticeKind.EndedByNewDirector =>
                $"longer {Word(item.Notice.Kind == NoticeKind.Withdrawn ? WindowStanding.Withdrawn : WindowStanding.EndedByNewDirector)} {AnswerWords.Day(item.From)}: \"{item.Notice.Reason}\" ({item.File})",
            NoticeKind.Reviewed =>
                $"reviewed, unchanged, {AnswerWords.Day(item.From)} by {item.Notice.By} ({item.File})",
            NoticeKind.Adopted =>
                $"adopted {AnswerWords.Day(item.From)} by {item.Notice.By} ({item.File})",
            NoticeKind.StudyEnded => $"study ended by {item.Notice.By} ({item.File})",
        };

    /// <summary>A window by its names.</summary>
    public static string Named(StandingWindow item) =>
        $"{item.Window.Row.Analyte}, {item.Window.GroupName}, {item.Window.Row.Storage} ({item.Report.Name})";

    /// <summary>A window with how it stands, and why or from when.</summary>
    public static string Of(StandingWindow item) =>
        $"{Named(item)}: {Word(item.Standing)}{More(item)}";

    /// <summary>How far a study came, in words.</summary>
    public static string Word(StudyStage stage) =>
        stage switch
        {
            StudyStage.Planned => "planned",
            StudyStage.Locked => "locked and not reported",
            StudyStage.Ended => "ended without a conclusion",
        };

    /// <summary>A study without a report.</summary>
    public static string Of(RegisteredStudy study) =>
        $"study {study.Code} ({study.Place}): {Word(study.Stage)}{(study.On is { } day ? ", " + AnswerWords.Day(day) : "")}{(study.Why is { } why ? $": {why}" : "")}";

    /// <summary>Why, or from when, a window stands as it does; nothing where its standing says enough.</summary>
    private static string More(StandingWindow item) =>
        item.Standing switch
        {
            WindowStanding.Superseded => $" by {item.SupersededBy}",
            WindowStanding.Withdrawn
            or WindowStanding.EndedByNewDirector when item.TakenAwayBy is { } notice =>
                $" {AnswerWords.Day(notice.From)} ({notice.File}): \"{notice.Notice.Reason}\"",
            WindowStanding.NotYet => $", from {AnswerWords.Day(item.Report.From)}",
            WindowStanding.Declined when item.Report.Reason is { } reason => $": \"{reason}\"",
            _ => "",
        };
}
