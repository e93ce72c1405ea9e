namespace StabilityStudy.Core.Register;

/// <summary>For which instruments and lots rules are written down.</summary>
/// <param name="Instruments">Codes of the instruments; empty where none is recorded.</param>
/// <param name="Lots">Codes of the reagent lots; empty where none is recorded.</param>
public sealed record BenchScope(ImmutableArray<string> Instruments, ImmutableArray<string> Lots);

/// <summary>How long the specimens of a patient group may wait, as <see cref="MayTest"/> answers.</summary>
/// <param name="Group">Code of the group; null for one that is not known.</param>
/// <param name="Limit">Longest age that is tested; null where the director is asked whatever the age.</param>
/// <param name="Within">The answer at that age, and where there is none at the shortest rule.</param>
/// <param name="Beyond">The answer a minute later.</param>
public sealed record BenchRule(
    string? Group,
    TimeSpan? Limit,
    BenchAnswer Within,
    BenchAnswer Beyond
)
{
    /// <summary>Whether it is for every group that neither a study nor a rule names.</summary>
    public bool IsOfOthers { get; init; }

    /// <summary>Name of the group; null for one that is not known or not named.</summary>
    public string? Name => Within.KnowsGroup ? Within.From[0].Window.GroupName : null;

    /// <summary>Whether a director approved it from a study.</summary>
    public bool IsApproved => Within.Reason == BenchReason.ApprovedWindow;

    /// <summary>What is tested without an approved window.</summary>
    public TimeSpan Today => Within.Today ?? TimeSpan.Zero;

    /// <summary>Up to which age plasma taken off the cells within <see cref="Today"/> is tested; null where the rule has no second step.</summary>
    public TimeSpan? AsPlasma => Within.AsPlasma;

    /// <summary>Up to which age the director is asked where a fact of the scope is not true; null where nothing longer was approved.</summary>
    public TimeSpan? AskedUpTo { get; init; }

    /// <summary>What became of a longer wait that is not in force: declined, not supported, withdrawn or ended; null where there is none.</summary>
    public WindowStanding? Refused { get; init; }

    /// <summary>Whether a decision made today's rule shorter.</summary>
    public bool IsShortened =>
        Within.KnowsGroup && Today < Within.From[0].Window.Row.Today && !IsApproved;
}

/// <summary>The rules of an analyte in a storage on a day, for the documents by which a bench works: every one is an answer of <see cref="MayTest"/>.</summary>
/// <param name="Register">The verified reports.</param>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="Scope">For which instruments and lots.</param>
/// <param name="Day">The day as of which they hold.</param>
/// <param name="SpinTakes">Time from the spin to the test at this bench.</param>
public sealed record BenchRules(
    WindowRegister Register,
    string Analyte,
    string Storage,
    BenchScope Scope,
    DateOnly Day,
    TimeSpan SpinTakes
)
{
    private static readonly ImmutableArray<string> s_others = ["other", "another", "none of these"];

    /// <summary>The group that is not known first, then from the shortest to the longest, last every other group.</summary>
    public ImmutableArray<BenchRule> Rules { get; private init; } = [];

    /// <summary>The rows of the reports that count.</summary>
    public ImmutableArray<StandingWindow> Rows { get; private init; } = [];

    /// <summary>A row that says how the tube waits and what holds for all.</summary>
    public RegisteredWindow Any => Rows[0].Window;

    /// <summary>The reports from which the rules follow.</summary>
    public ImmutableArray<RegisteredReport> Reports =>
        [
            .. Rules
                .SelectMany(rule => rule.Within.From)
                .Select(item => item.Report)
                .Distinct()
                .OrderByDescending(report => report.DecidedAt),
        ];

    /// <summary>First day on which all of it holds.</summary>
    public DateOnly From => Approved.Select(item => item.Report.From).DefaultIfEmpty(Day).Max();

    /// <summary>Last day on which all of it holds: of the first review, or before a decision or notice that is signed takes effect; null where none is set.</summary>
    public DateOnly? Until =>
        Approved
            .Select(item => item.Review)
            .Concat(
                Rows.SelectMany(item => item.Coming)
                    .Where(notice => notice.Notice.TakesAway)
                    .Select(notice => (DateOnly?)notice.From.AddDays(-1))
            )
            .Concat(
                Rows.Where(item => item.Standing == WindowStanding.NotYet)
                    .Select(item => (DateOnly?)item.Report.From.AddDays(-1))
            )
            .Min();

    /// <summary>The windows that a director approved.</summary>
    public ImmutableArray<StandingWindow> Approved =>
        [
            .. Rules
                .Where(rule => rule.IsApproved)
                .SelectMany(rule => rule.Within.From)
                .DistinctBy(item => (item.Report, item.Window.Row.Group)),
        ];

    /// <summary>Answers that no document can be made from; the first says why there is none.</summary>
    public ImmutableArray<BenchAnswer> Obstacles { get; private init; } = [];

    /// <summary>What may be asked about: every analyte and storage of which a report that counts speaks, and in which scopes.</summary>
    /// <param name="windows">The windows as they stand on the day.</param>
    /// <param name="day">The day.</param>
    public static ImmutableArray<(string Analyte, string Storage, BenchScope Scope)> Subjects(
        ImmutableArray<StandingWindow> windows,
        DateOnly day
    ) =>
        [
            .. MayTest
                .Counting(windows, day)
                .GroupBy(item => (item.Window.Row.Analyte, item.Window.Row.Storage))
                .OrderBy(rows => rows.Key)
                .SelectMany(rows =>
                    Scopes([.. rows]).Select(scope => (rows.Key.Analyte, rows.Key.Storage, scope))
                ),
        ];

    /// <summary>The rules.</summary>
    /// <param name="windows">The windows as they stand on the day.</param>
    /// <param name="register">The verified reports.</param>
    /// <param name="analyte">Key of the analyte.</param>
    /// <param name="storage">Key of the storage.</param>
    /// <param name="scope">For which instruments and lots.</param>
    /// <param name="day">The day as of which they hold.</param>
    /// <param name="spinTakes">Time from the spin to the test at this bench.</param>
    public static BenchRules Of(
        ImmutableArray<StandingWindow> windows,
        WindowRegister register,
        string analyte,
        string storage,
        BenchScope scope,
        DateOnly day,
        TimeSpan spinTakes
    )
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(scope);
        ImmutableArray<StandingWindow> rows =
        [
            .. MayTest
                .Counting(windows, day)
                .Where(item =>
                    item.Window.Row.Analyte == analyte && item.Window.Row.Storage == storage
                ),
        ];
        var rules = new BenchRules(register, analyte, storage, scope, day, spinTakes)
        {
            Rows = rows,
            Windows = windows,
        };
        var groups = rows.Select(item => item.Window.Row.Group).Distinct().ToImmutableArray();
        ImmutableArray<BenchRule> known = [.. groups.Select(group => rules.RuleOf(group))];
        return rules with
        {
            Rules =
            [
                rules.RuleOf(null),
                .. known
                    .OrderBy(rule => rule.Limit ?? TimeSpan.Zero)
                    .ThenBy(rule => rule.Name, StringComparer.Ordinal),
                rules.RuleOf(Other(groups)) with
                {
                    IsOfOthers = true,
                },
            ],
            Obstacles =
            [
                .. groups
                    .SelectMany(group => rules.Times.SelectMany(age => rules.Answers(group, age)))
                    .Where(answer => IsObstacle(answer.Reason))
                    .DistinctBy(answer => answer.Reason),
            ],
        };
    }

    /// <summary>A code that no rule names.</summary>
    public string OtherGroup => Rules[^1].Group ?? "";

    /// <summary>A question with every fact of the scope true: the first instrument and lot, spun as late as this bench does.</summary>
    public BenchQuestion Question(string? group, TimeSpan? age) =>
        new(Analyte, Day)
        {
            Group = group,
            Storage = Storage,
            Waited = age,
            Spun =
                age is { } waited && Any.Handling?.Storage.SpinToTest is not null
                    ? waited > SpinTakes
                        ? waited - SpinTakes
                        : TimeSpan.Zero
                    : null,
            Instrument = Scope.Instruments.FirstOrDefault(),
            Lot = Scope.Lots.FirstOrDefault(),
            CountsOpenAsNotTrue = true,
        };

    /// <summary>The same answered.</summary>
    public BenchAnswer Answer(BenchQuestion question) =>
        question.Day == Day
            ? MayTest.AnswerFrom(Windows, Register, question)
            : MayTest.Answer(Register, question);

    /// <summary>Every row of the register as it stands on the day, for the hundreds of questions about that day.</summary>
    private ImmutableArray<StandingWindow> Windows { get; init; } = [];

    /// <summary>Every time that a rule or a window ends.</summary>
    private ImmutableArray<TimeSpan> Times =>
        [
            .. Rows.SelectMany(item =>
                    new[]
                    {
                        item.Window.Row.Today,
                        item.Window.Approved,
                        item.Window.Interim,
                        item.Window.Handling?.TodaysRule.AsPlasma,
                    }
                )
                .OfType<TimeSpan>()
                .Distinct()
                .Order(),
        ];

    private BenchRule RuleOf(string? group)
    {
        BenchAnswer? within = null;
        foreach (var age in Times)
        {
            var answer = Strictest(group, age);
            if (answer.Verdict != BenchVerdict.Test)
            {
                break;
            }

            within = answer;
        }

        var limit = within?.Age;
        within ??= Strictest(group, Times[0]);
        return new BenchRule(
            group,
            limit,
            within,
            Strictest(group, (limit ?? Times[0]) + TimeSpan.FromMinutes(1))
        )
        {
            AskedUpTo = Times
                .Where(age =>
                    Answer(
                        Question(group, age) with
                        {
                            Instrument = BenchCase.Another,
                            Lot = BenchCase.Another,
                        }
                    ).Verdict == BenchVerdict.AskDirector
                )
                .Select(age => (TimeSpan?)age)
                .LastOrDefault(),
            Refused = Rows.FirstOrDefault(item =>
                item.Window.Row.Group == group
                && item.Standing
                    is WindowStanding.Declined
                        or WindowStanding.NotSupported
                        or WindowStanding.Withdrawn
                        or WindowStanding.EndedByNewDirector
            )?.Standing,
        };
    }

    /// <summary>The strictest answer over all instruments and lots of the scope.</summary>
    private BenchAnswer Strictest(string? group, TimeSpan age) =>
        Answers(group, age).MinBy(answer => answer.Verdict) ?? Answer(Question(group, age));

    private IEnumerable<BenchAnswer> Answers(string? group, TimeSpan age) =>
        Scope
            .Instruments.DefaultIfEmpty()
            .SelectMany(instrument =>
                Scope
                    .Lots.DefaultIfEmpty()
                    .Select(lot =>
                        Answer(Question(group, age) with { Instrument = instrument, Lot = lot })
                    )
            );

    private static bool IsObstacle(BenchReason reason) =>
        reason
            is BenchReason.ReportNotTrusted
                or BenchReason.InWordsOnly
                or BenchReason.RefusedLater
                or BenchReason.TwoStorages
                or BenchReason.NoticeInDoubt
                or BenchReason.PastReview;

    private static string Other(ImmutableArray<string> groups) =>
        s_others.First(code => !groups.Contains(code));

    private static IEnumerable<BenchScope> Scopes(ImmutableArray<StandingWindow> rows) =>
        rows.Where(item =>
                item.Standing
                    is WindowStanding.InForce
                        or WindowStanding.PastReview
                        or WindowStanding.InDoubt
                && item.Window.Approved > item.Window.Row.Today
            )
            .Select(item => item.Window.Row)
            .DistinctBy(row => (Joined(row.Instruments), Joined(row.Reagents)))
            .Select(row => new BenchScope(row.Instruments, row.Reagents))
            .DefaultIfEmpty(new BenchScope([], []));

    private static string Joined(ImmutableArray<string> codes) => string.Join('\n', codes);
}
