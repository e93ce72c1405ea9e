using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Register;

/// <summary>
/// Whether a specimen may still be tested. Today's rule is asked first, so that a new lot never takes away what is allowed anyway; a decision in force that
/// is shorter than today's rule shortens it. Beyond it an approved window answers only where every fact of its scope holds and the day of its review has not
/// passed. A window runs to its last minute inclusive. Where two windows can be meant, the shorter holds.
/// </summary>
public static class MayTest
{
    /// <summary>Answers a question from the register.</summary>
    /// <param name="register">The verified reports.</param>
    /// <param name="question">The question.</param>
    public static BenchAnswer Answer(WindowRegister register, BenchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(question);
        return AnswerFrom(register.On(question.Day), register, question);
    }

    /// <summary>The same from the windows as they stand on the day of the question, for whoever asks many.</summary>
    /// <param name="windows">What <see cref="WindowRegister.On"/> gives for that day.</param>
    /// <param name="register">The verified reports.</param>
    /// <param name="question">The question.</param>
    public static BenchAnswer AnswerFrom(
        ImmutableArray<StandingWindow> windows,
        WindowRegister register,
        BenchQuestion question
    )
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(question);
        ImmutableArray<StandingWindow> counting =
        [
            .. Counting(windows, question.Day)
                .Where(item => item.Window.Row.Analyte == question.Analyte),
        ];
        var notTrusted = register.NotTrusted(question.Analyte);
        var storages = counting
            .Select(item => item.Window.Row.Storage)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToImmutableArray();
        ImmutableArray<string> asked = question.Storage is { } one ? [one] : storages;
        if (question is { Age: not null, Unfit: not null })
        {
            return new(question, BenchVerdict.DoNotTest, BenchReason.TubeUnfit)
            {
                Age = question.Age,
                Storage = question.Storage,
            };
        }

        return asked
            .Select(storage =>
                InStorage(
                    question,
                    storage,
                    [.. counting.Where(item => item.Window.Row.Storage == storage)],
                    notTrusted
                )
            )
            .DefaultIfEmpty(Without(question, null, notTrusted))
            .Select(answer =>
                answer with
                {
                    KnowsAnalyte = !counting.IsEmpty,
                    Groups = SpelledQuestion.Groups(counting.Select(item => item.Window)),
                    Known =
                        answer.Reason != BenchReason.NoRule ? []
                        : counting.IsEmpty ? SpelledQuestion.Analytes(register.Reports)
                        : SpelledQuestion.Storages(counting.Select(item => item.Window)),
                }
            )
            .OrderBy(answer => answer.Verdict)
            .ThenBy(answer => answer.Limit ?? TimeSpan.Zero)
            .First();
    }

    /// <summary>The rows from which answers follow on a day: of reports that were verified and decided by then, and not superseded.</summary>
    internal static IEnumerable<StandingWindow> Counting(
        ImmutableArray<StandingWindow> windows,
        DateOnly day
    ) =>
        windows.Where(item =>
            item.Report.Counts
            && item.Standing != WindowStanding.Superseded
            && DateOnly.FromDateTime((item.Report.DecidedAt ?? default).DateTime) <= day
        );

    /// <summary>An age in whole minutes, rounded up: a second past the window is past it.</summary>
    public static TimeSpan RoundedUp(TimeSpan waited) =>
        TimeSpan.FromMinutes(
            (long)((waited.Ticks + TimeSpan.TicksPerMinute - 1) / TimeSpan.TicksPerMinute)
        );

    private static BenchAnswer Without(
        BenchQuestion question,
        string? storage,
        ImmutableArray<RegisteredReport> notTrusted
    ) =>
        (
            question.Age is null
                ? new BenchAnswer(question, BenchVerdict.DoNotTest, BenchReason.TimeUnknown)
            : notTrusted.IsEmpty
                ? new BenchAnswer(question, BenchVerdict.AskDirector, BenchReason.NoRule)
            : new BenchAnswer(question, BenchVerdict.AskDirector, BenchReason.ReportNotTrusted)
        ) with
        {
            Age = question.Age,
            Storage = storage,
            NotTrusted = notTrusted,
        };

    private static BenchAnswer InStorage(
        BenchQuestion question,
        string storage,
        ImmutableArray<StandingWindow> counting,
        ImmutableArray<RegisteredReport> notTrusted
    )
    {
        if (counting.IsEmpty)
        {
            return Without(question, storage, notTrusted);
        }

        var ofGroup = counting
            .Where(item => item.Window.Row.Group == question.Group)
            .ToImmutableArray();
        var knowsGroup = !ofGroup.IsEmpty;
        var rows = knowsGroup ? ofGroup : counting;
        var today = rows.Min(item => RuleSteps.For(item, question));
        var answer = new BenchAnswer(question, BenchVerdict.DoNotTest, BenchReason.TimeUnknown)
        {
            Age = question.Age,
            Storage = storage,
            KnowsGroup = knowsGroup,
            Today = today,
            Limit = today,
            AsPlasma =
                rows.Min(item =>
                    RuleSteps.SecondStep(item, question.Day)
                    ?? RuleSteps.FirstStep(item, question.Day)
                )
                    is var second
                && second > today
                    ? second
                    : null,
            IsSecondStep = rows.Any(item =>
                RuleSteps.FirstStep(item, question.Day) < RuleSteps.For(item, question)
            ),
            From = [.. rows.Where(item => RuleSteps.For(item, question) == today).Take(1)],
            NotTrusted = notTrusted,
        };
        if (answer.Age is not { } age)
        {
            return answer;
        }

        return !knowsGroup ? OfUnknownGroup(answer, age, today, rows)
            : !notTrusted.IsEmpty ? Ask(answer, BenchReason.ReportNotTrusted)
            : rows.FirstOrDefault(IsInWordsOnly) is { } inWords
                ? Ask(answer, BenchReason.InWordsOnly, inWords)
            : age <= today ? Said(answer, BenchVerdict.Test, BenchReason.TodaysRule)
            : BeyondToday(answer, age, today, rows);
    }

    /// <summary>Whose blood it is nobody knows: the shortest of today's rules, and no approved window, which is of one group.</summary>
    private static BenchAnswer OfUnknownGroup(
        BenchAnswer answer,
        TimeSpan age,
        TimeSpan shortest,
        ImmutableArray<StandingWindow> rows
    ) =>
        age > shortest ? Said(answer, BenchVerdict.DoNotTest, BenchReason.TooOld)
        : !answer.NotTrusted.IsEmpty ? Ask(answer, BenchReason.ReportNotTrusted)
        : rows.FirstOrDefault(IsInWordsOnly) is { } inWords
            ? Ask(answer, BenchReason.InWordsOnly, inWords)
        : rows.All(item => item.Window.Anticoagulant != Anticoagulant.Heparin)
            ? Ask(answer, BenchReason.NoRuleForHeparin)
        : Said(answer, BenchVerdict.Test, BenchReason.TodaysRule);

    private static BenchAnswer BeyondToday(
        BenchAnswer answer,
        TimeSpan age,
        TimeSpan today,
        ImmutableArray<StandingWindow> rows
    )
    {
        var (instrument, lot) = (answer.Question.Instrument, answer.Question.Lot);
        var question = answer.Question;
        var claims = rows.Where(item =>
                item.Standing
                    is WindowStanding.InForce
                        or WindowStanding.PastReview
                        or WindowStanding.InDoubt
                && item.Window.Approved > today
            )
            .ToImmutableArray();
        var covering = claims
            .Where(item => item.Window.Covers(question))
            .OrderBy(item => item.Window.Approved)
            .ToImmutableArray();
        if (covering.IsEmpty)
        {
            return claims.Any(item => age <= item.Window.Approved)
                ? Ask(
                    answer,
                    BenchReason.NotCovered,
                    [.. claims.Where(item => age <= item.Window.Approved)]
                ) with
                {
                    Due = DueFor([.. claims.Where(item => age <= item.Window.Approved)], question),
                }
                : Said(answer, BenchVerdict.DoNotTest, BenchReason.TooOld);
        }

        var shortest = covering[0];
        if (age > shortest.Window.Approved)
        {
            return Said(answer, BenchVerdict.DoNotTest, BenchReason.TooOld) with
            {
                Limit =
                    shortest.Standing == WindowStanding.InForce ? shortest.Window.Approved : today,
                From =
                [
                    shortest,
                    .. covering.Where(item =>
                        item.Standing == WindowStanding.InForce && age <= item.Window.Approved
                    ),
                ],
            };
        }

        return covering.FirstOrDefault(item => item.Standing == WindowStanding.InDoubt)
                is { } inDoubt
                ? Ask(answer, BenchReason.NoticeInDoubt, inDoubt)
            : covering.Where(item => item.Standing == WindowStanding.PastReview).ToImmutableArray()
                is [_, ..] past
                ? Ask(answer, BenchReason.PastReview, [.. past])
            : rows.FirstOrDefault(item => RefusesLater(item, covering, instrument, lot))
                is { } refusal
                ? Ask(answer, BenchReason.RefusedLater, refusal, shortest)
            : rows.Select(item => item.Window.StorageWords).Distinct().Count() > 1
                ? Ask(answer, BenchReason.TwoStorages, [.. covering])
            : Said(answer, BenchVerdict.Test, BenchReason.ApprovedWindow) with
            {
                Limit = shortest.Window.Approved,
                From = covering,
            };
    }

    /// <summary>Whether a row leaves today's rule in force, or lost its window, that can be about the same specimen and was decided after one of the approvals.</summary>
    private static bool RefusesLater(
        StandingWindow item,
        ImmutableArray<StandingWindow> approvals,
        string? instrument,
        string? lot
    ) =>
        DecidedAgainstAt(item) is { } at
        && (item.Window.Row.Instruments.IsEmpty || item.Window.Covers(instrument, null))
        && (item.Window.Row.Reagents.IsEmpty || item.Window.Covers(null, lot))
        && approvals.Any(approval =>
            !ReferenceEquals(approval.Report, item.Report)
            && approval.Report.DecidedAt < at
            && approval.Window.Overlaps(item.Window)
        );

    /// <summary>When a longer window than today's rule was refused or withdrawn; null where it was not.</summary>
    private static DateTimeOffset? DecidedAgainstAt(StandingWindow item) =>
        item.Standing switch
        {
            WindowStanding.Declined or WindowStanding.NotSupported => item.Report.DecidedAt,
            WindowStanding.Withdrawn or WindowStanding.EndedByNewDirector =>
                item.TakenAwayBy?.SignedAt,
            WindowStanding.NotTrusted
            or WindowStanding.NotDecided
            or WindowStanding.Superseded
            or WindowStanding.InDoubt
            or WindowStanding.NotYet
            or WindowStanding.PastReview
            or WindowStanding.InForce => null,
        };

    /// <summary>The smallest study that would cover what is named and not covered.</summary>
    private static RepeatTier? DueFor(
        ImmutableArray<StandingWindow> claims,
        BenchQuestion question
    ) => claims.Max(item => item.Window.DueFor(question.Instrument, question.Lot));

    private static bool IsInWordsOnly(StandingWindow item) =>
        item.Window.IsInWordsOnly
        && item.Standing
            is WindowStanding.InForce
                or WindowStanding.PastReview
                or WindowStanding.InDoubt;

    private static BenchAnswer Said(BenchAnswer answer, BenchVerdict verdict, BenchReason reason) =>
        answer with
        {
            Verdict = verdict,
            Reason = reason,
        };

    private static BenchAnswer Ask(
        BenchAnswer answer,
        BenchReason reason,
        params ImmutableArray<StandingWindow> from
    ) =>
        answer with
        {
            Verdict = BenchVerdict.AskDirector,
            Reason = reason,
            From = from.IsEmpty ? answer.From : from,
        };
}
