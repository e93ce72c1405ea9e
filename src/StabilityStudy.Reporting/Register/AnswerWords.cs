using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Approved;

namespace StabilityStudy.Reporting.Register;

/// <summary>An answer for the bench in words: the answer first, then why, then from which report.</summary>
public static class AnswerWords
{
    private const string Meanwhile = "Do not test meanwhile.";

    /// <summary>The two or three words that begin the answer.</summary>
    public static string Verdict(BenchVerdict verdict) =>
        VerdictWords.Of(verdict).ToUpperInvariant();

    /// <summary>The whole answer.</summary>
    public static string Sentence(BenchAnswer answer) =>
        $"{Verdict(answer.Verdict)}: {Why(answer)}{Source(answer)}";

    private static string Why(BenchAnswer answer)
    {
        var subject = Subject(answer);
        return answer.Reason switch
        {
            BenchReason.TimeUnknown =>
                $"{subject}, collection time unknown. Know it? Add --waited \"2 h\" or --collected 22:10.",
            BenchReason.TubeUnfit =>
                $"{answer.Question.Analyte}, {answer.Question.Unfit}: unfit whatever its age.",
            BenchReason.NoRule when answer.Known.IsEmpty =>
                $"{subject}; no report in the register that counts has a rule. {Meanwhile}",
            BenchReason.NoRule when answer.KnowsAnalyte =>
                $"{answer.Question.Analyte}: no report in the register that counts has a rule for storage \"{answer.Storage}\", only for {Named(answer.Known)}. {Meanwhile}",
            BenchReason.NoRule =>
                $"no report in the register that counts has a rule for \"{answer.Question.Analyte}\", only for {Named(answer.Known)}. {Meanwhile}",
            BenchReason.ReportNotTrusted =>
                $"{subject}; {string.Join(", ", answer.NotTrusted.Select(report => report.File))} could not be verified now and may be about it ({answer.NotTrusted[0].Why}). {Meanwhile}",
            BenchReason.TooOld when !answer.KnowsGroup =>
                $"{subject}; at most {Time(answer.Limit)}, the shortest of today's rules. {Groups(answer)}{Plasma(answer)}",
            BenchReason.TooOld =>
                $"{subject}; at most {Time(answer.Limit)}.{Longer(answer)}{Plasma(answer)}",
            BenchReason.NotCovered =>
                $"{subject}; {NotCovered(answer)} {Today(answer)}{Due(answer)} {Meanwhile}",
            BenchReason.NoticeInDoubt =>
                $"{subject}; a notice speaks against the {Approved(answer)} window and cannot be relied on. {answer.From[0].Doubt} {Today(answer)} {Meanwhile}",
            BenchReason.PastReview =>
                $"{subject}; the {Approved(answer)} window was to be reviewed by {Day(answer.From[0].Review)}. {Today(answer)} {Meanwhile}",
            BenchReason.RefusedLater when answer.From[0].TakenAwayBy is { } notice =>
                $"{subject}; the window of {answer.From[0].Report.Name} was withdrawn by {notice.File}, which does not say whether the window of {answer.From[^1].Report.Name} still holds. {Today(answer)} {Meanwhile}",
            BenchReason.RefusedLater =>
                $"{subject}; {answer.From[0].Report.Name} later left today's rule in force, and does not say whether the window of {answer.From[^1].Report.Name} still holds. {Today(answer)} {Meanwhile}",
            BenchReason.InWordsOnly =>
                $"{subject}; the decision is in words: \"{string.Join("; ", answer.From[0].Window.Conditions)}\". {Meanwhile}",
            BenchReason.TwoStorages =>
                $"{subject}; the reports mean different storages by {answer.Storage}. {Today(answer)} {Meanwhile}",
            BenchReason.NoRuleForHeparin =>
                $"{subject}; no report in the register has a rule for heparin, which may be shorter. {Meanwhile} {Groups(answer)}",
            BenchReason.TodaysRule when !answer.KnowsGroup =>
                $"{subject}; the shortest of today's rules allows {Time(answer.Limit)}.",
            BenchReason.TodaysRule => $"{subject}; {Rule(answer)} allows {Time(answer.Limit)}.",
            BenchReason.ApprovedWindow => $"{subject} of {Time(answer.Limit)}.{Terms(answer)}",
        };
    }

    private static string Subject(BenchAnswer answer)
    {
        var group =
            answer.KnowsGroup ? answer.From[0].Window.GroupName
            : answer.Question.Group is { } named ? $"group \"{named}\" not known"
            : "patient group unknown";
        var storage = answer.Storage is { } code ? $", {code}" : "";
        var age = answer.Age is { } known
            ? $", {Time(known)}{(answer.Question.Separated is { } off ? $" (plasma off the cells at {Time(off)})" : "")}"
            : "";
        return $"{answer.Question.Analyte}, {group}{storage}{age}";
    }

    /// <summary>What to do for whoever knows the group.</summary>
    private static string Groups(BenchAnswer answer) =>
        answer.Question.Group is null
            ? $"Know the group? Add --group {string.Join(" or ", answer.Groups.Select(group => group.Code))}."
            : $"Groups here: {Named(answer.Groups)}.";

    /// <summary>"none (No anticoagulant), ufh (Unfractionated heparin)".</summary>
    private static string Named(ImmutableArray<KnownCode> codes) =>
        string.Join(
            ", ",
            codes.Select(item => item.Name is "" ? item.Code : $"{item.Code} ({item.Name})")
        );

    private static string NotCovered(BenchAnswer answer)
    {
        var window = answer.From[0].Window;
        var question = answer.Question;
        var (instrument, lot) = (question.Instrument, question.Lot);
        string[] open =
        [
            .. Uncovered(window, instrument, lot) is { Length: > 0 } named ? new[] { named } : [],
            .. !window.CoversSpin(question)
                ? new[]
                {
                    question.SpinToTest is { } time
                        ? $"a spin {Time(time)} before the test is not covered (at most {Time(window.Handling?.Storage.SpinToTest)})"
                        : $"the time of the spin is not stated (at most {Time(window.Handling?.Storage.SpinToTest)} before the test)",
                }
                : [],
            .. question.CountsOpenAsNotTrue && instrument is null
                ? new[] { $"the instrument is not stated ({Codes(window.Row.Instruments)})" }
                : [],
            .. question.CountsOpenAsNotTrue && lot is null
                ? new[] { $"the lot is not stated ({Codes(window.Row.Reagents)})" }
                : [],
        ];
        return $"{string.Join(", ", open)}, so the {Approved(answer)} window does not hold.";
    }

    /// <summary>Which of an instrument and a lot a window does not hold for; empty where it holds for those that are named.</summary>
    public static string Uncovered(RegisteredWindow window, string? instrument, string? lot)
    {
        ArgumentNullException.ThrowIfNull(window);
        return string.Join(
            ", ",
            [
                .. instrument is not null && !window.Row.Instruments.Contains(instrument)
                    ? new[]
                    {
                        $"instrument {instrument} is not covered ({Codes(window.Row.Instruments)})",
                    }
                    : [],
                .. lot is not null && !window.Row.Reagents.Contains(lot)
                    ? new[] { $"lot {lot} is not covered ({Codes(window.Row.Reagents)})" }
                    : [],
            ]
        );
    }

    /// <summary>The study that is due, with the words that begin it.</summary>
    public static string DueStudy(RepeatTier tier, StandingWindow item, string? lot)
    {
        ArgumentNullException.ThrowIfNull(item);
        var start = $"start --repeat {item.Report.File}";
        return tier switch
        {
            RepeatTier.Full => $"the full study ({start} --tier full)",
            RepeatTier.Reduced =>
                $"for a new lot of the same reagent a reduced study at {Time(item.Window.Approved)} ({start}{(lot is null ? "" : $" --reason \"new lot {lot}\"")}); for another reagent the full study",
        };
    }

    /// <summary>Conditions, and the scope as far as the question left it open, so that whoever reads it can see whether it fits.</summary>
    private static string Terms(BenchAnswer answer)
    {
        var conditions = answer.From.SelectMany(item => item.Window.Conditions).Distinct();
        var scopes = answer
            .From.Select(item => Scope(answer.Question, item.Window))
            .Where(scope => scope.Length > 0)
            .Distinct()
            .ToImmutableArray();
        return string.Concat(conditions.Select(text => $" Condition: {text.TrimEnd('.')}."))
            + (scopes.IsEmpty ? "" : $" Only with {string.Join("; or ", scopes)}.");
    }

    private static string Scope(BenchQuestion question, RegisteredWindow window) =>
        string.Join(
            ", ",
            [
                .. question.Instrument is null
                    ? new[] { $"instrument {Codes(window.Row.Instruments)}" }
                    : [],
                .. question.Lot is null ? new[] { $"lot {Codes(window.Row.Reagents)}" } : [],
            ]
        );

    /// <summary>What to do where another report allows more than the shortest that can be meant.</summary>
    private static string Longer(BenchAnswer answer) =>
        answer.From.Length < 2 ? ""
        : answer.Question is { Instrument: not null, Lot: not null }
            ? " Reports claim different windows, and the shorter holds."
        : " The window is longer for some: add --instrument and --lot.";

    /// <summary>What the second step of today's rule allows, where nobody said when the plasma was taken off the cells.</summary>
    private static string Plasma(BenchAnswer answer) =>
        answer is { AsPlasma: { } second, Question.Separated: null } && answer.Age <= second
            ? $" As plasma taken off the cells within {Time(answer.Today)} at most {Time(second)}: was it? Add --separated."
            : "";

    /// <summary>What study shows that the window holds there too.</summary>
    private static string Due(BenchAnswer answer) =>
        answer.Due is { } tier
            ? $" Due before it is used beyond that: {DueStudy(tier, answer.From[0], answer.Question.Lot)}."
            : "";

    private static string Today(BenchAnswer answer) => $"Today's rule is {Time(answer.Today)}.";

    private static string Rule(BenchAnswer answer) =>
        answer.IsSecondStep || answer.From[0].Window.Row.Today == answer.Limit
            ? "today's rule"
            : "a decision shorter than today's rule";

    private static string Source(BenchAnswer answer)
    {
        if (answer.From.IsEmpty)
        {
            return "";
        }

        var name = string.Join(", ", answer.From.Select(item => item.Report.Name).Distinct());
        return answer switch
        {
            { Reason: BenchReason.ApprovedWindow } =>
                $" ({name}, in force from {Day(answer.From[0].Report.From)})",
            { Reason: BenchReason.TooOld, KnowsGroup: true } when answer.Limit == answer.Today =>
                $" ({Rule(answer)}, {name}{Longer(answer.From[0].Standing)})",
            { Reason: BenchReason.TodaysRule or BenchReason.TooOld or BenchReason.TimeUnknown } =>
                $" ({name})",
            { Verdict: BenchVerdict.AskDirector } => $" ({name})",
            _ => "",
        };
    }

    private static string Longer(WindowStanding standing) =>
        standing switch
        {
            WindowStanding.Declined => "; longer was declined",
            WindowStanding.Withdrawn => "; longer was withdrawn",
            WindowStanding.EndedByNewDirector => "; longer was ended by a new director",
            _ => "",
        };

    private static string Approved(BenchAnswer answer) => Time(answer.From[0].Window.Approved);

    /// <summary>Codes, or that none were recorded, so that nothing is shown of any.</summary>
    public static string Codes(ImmutableArray<string> codes) =>
        codes.IsEmpty ? "not recorded" : string.Join(", ", codes);

    /// <summary>"6 h", or "none".</summary>
    public static string Time(TimeSpan? time) =>
        time is { } known ? DurationText.FormatWindow(known) : "none";

    /// <summary>"2026-05-04", or nothing.</summary>
    public static string Day(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    /// <summary>"1 window", "2 windows".</summary>
    public static string Count(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");
}
