namespace StabilityStudy.Core.Register;

/// <summary>The part of the rules that a system tries in turn; the first that applies answers. The zero member comes first.</summary>
public enum SystemStep
{
    /// <summary>Nobody knows how old the tube is.</summary>
    TimeNotKnown,

    /// <summary>The tube is unfit.</summary>
    TubeUnfit,

    /// <summary>Today's rule.</summary>
    TodaysRule,

    /// <summary>The approved window.</summary>
    ApprovedWindow,

    /// <summary>Something was approved, and not for this tube.</summary>
    OutsideScope,

    /// <summary>All that is left.</summary>
    AnythingElse,
}

/// <summary>A line of the table by which a laboratory information system answers as <see cref="MayTest"/> does.</summary>
/// <param name="Step">Which part of the rules it is.</param>
/// <param name="Verdict">Its answer.</param>
public sealed record SystemRule(SystemStep Step, BenchVerdict Verdict)
{
    /// <summary>The groups to which it applies; empty for those that <see cref="ForOthers"/> tells.</summary>
    public ImmutableArray<string> Groups { get; init; } = [];

    /// <summary>Whether it applies to a group that is empty or that no rule names.</summary>
    public bool ForOthers { get; init; }

    /// <summary>Oldest age to which it applies; null for any.</summary>
    public TimeSpan? UpTo { get; init; }

    /// <summary>Age that has to be passed for it to apply; null for none.</summary>
    public TimeSpan? Over { get; init; }

    /// <summary>Age by which the plasma was taken off the cells; null where it does not matter.</summary>
    public TimeSpan? SeparatedBy { get; init; }

    /// <summary>Whether every fact of the scope has to be true, for a test also the day.</summary>
    public bool InScope { get; init; }

    /// <summary>The condition of the window, in words; empty for none.</summary>
    public ImmutableArray<string> Conditions { get; init; } = [];

    /// <summary>The answer whose comment is reported; null where there is none.</summary>
    public BenchAnswer? Reported { get; init; }

    /// <summary>The number by which people call a step.</summary>
    public static int Number(SystemStep step) => (int)step + 1;

    /// <summary>The step from which an answer follows.</summary>
    public static SystemStep Of(BenchAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return (answer.Reason, answer.Verdict) switch
        {
            (BenchReason.TimeUnknown, _) => SystemStep.TimeNotKnown,
            (BenchReason.TubeUnfit, _) => SystemStep.TubeUnfit,
            (BenchReason.TodaysRule, _) => SystemStep.TodaysRule,
            (BenchReason.ApprovedWindow, _) => SystemStep.ApprovedWindow,
            (_, BenchVerdict.AskDirector) => SystemStep.OutsideScope,
            _ => SystemStep.AnythingElse,
        };
    }

    /// <summary>The lines in the order in which they are tried.</summary>
    public static ImmutableArray<SystemRule> Of(BenchRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ImmutableArray<BenchRule> groups = [.. rules.Rules.Where(rule => !rule.IsOfOthers)];
        return
        [
            new(SystemStep.TimeNotKnown, BenchVerdict.DoNotTest)
            {
                Reported = rules.Answer(rules.Question(null, null)),
            },
            new(SystemStep.TubeUnfit, BenchVerdict.DoNotTest)
            {
                Reported = rules.Answer(
                    rules.Question(null, TimeSpan.Zero) with
                    {
                        Unfit = "reason",
                    }
                ),
            },
            .. Together(
                groups.Where(rule => rule.Limit is not null),
                rule => rule.Today,
                rule =>
                    For(SystemStep.TodaysRule, BenchVerdict.Test, rule) with
                    {
                        UpTo = rule.Today,
                    }
            ),
            .. Together(
                groups.Where(rule => rule is { Limit: not null, AsPlasma: not null }),
                rule => (rule.Today, rule.AsPlasma),
                rule =>
                    For(SystemStep.TodaysRule, BenchVerdict.Test, rule) with
                    {
                        UpTo = rule.AsPlasma,
                        SeparatedBy = rule.Today,
                    }
            ),
            .. groups
                .Where(rule => rule.IsApproved)
                .Select(rule =>
                    For(SystemStep.ApprovedWindow, BenchVerdict.Test, rule) with
                    {
                        UpTo = rule.Limit,
                        InScope = true,
                        Conditions =
                        [
                            .. rule
                                .Within.From.SelectMany(item => item.Window.Conditions)
                                .Distinct(),
                        ],
                    }
                ),
            // Another report may allow other lots more: what it allows them says nothing of these.
            .. groups
                .Where(rule => rule.IsApproved && rule.AskedUpTo > rule.Limit)
                .Select(rule =>
                    For(SystemStep.AnythingElse, BenchVerdict.DoNotTest, rule) with
                    {
                        InScope = true,
                        Over = rule.Limit,
                        Reported = rule.Beyond,
                    }
                ),
            .. groups
                .Where(rule => rule.AskedUpTo is not null)
                .Select(rule =>
                    For(SystemStep.OutsideScope, BenchVerdict.AskDirector, rule) with
                    {
                        UpTo = rule.AskedUpTo,
                    }
                ),
            .. groups
                .OrderBy(rule => rule.Group is null)
                .Select(rule =>
                    For(SystemStep.AnythingElse, BenchVerdict.DoNotTest, rule) with
                    {
                        Reported = rules.Answer(
                            rules.Question(rule.Group, Longest(rule) + TimeSpan.FromMinutes(1))
                        ),
                    }
                ),
        ];
    }

    private static TimeSpan Longest(BenchRule rule) =>
        new[] { rule.Limit, rule.AsPlasma, rule.AskedUpTo, rule.Today }.OfType<TimeSpan>().Max();

    private static SystemRule For(SystemStep step, BenchVerdict verdict, BenchRule rule) =>
        new(step, verdict)
        {
            Groups = rule.Group is { } code ? [code] : [],
            ForOthers = rule.Group is null,
        };

    /// <summary>One line for the groups of which the same holds.</summary>
    private static IEnumerable<SystemRule> Together<T>(
        IEnumerable<BenchRule> rules,
        Func<BenchRule, T> same,
        Func<BenchRule, SystemRule> line
    ) =>
        rules
            .GroupBy(same)
            .Select(alike => alike.Select(line).ToImmutableArray())
            .Select(lines =>
                lines[0] with
                {
                    Groups = [.. lines.SelectMany(item => item.Groups)],
                    ForOthers = lines.Any(item => item.ForOthers),
                }
            );
}
