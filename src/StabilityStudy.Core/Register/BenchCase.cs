namespace StabilityStudy.Core.Register;

/// <summary>What a case puts to the test beside group and age. The zero member is nothing.</summary>
public enum CaseFact
{
    /// <summary>All facts of the scope are true.</summary>
    AllTrue,

    /// <summary>A second past the last minute.</summary>
    SecondPast,

    /// <summary>Plasma taken off the cells at a stated age.</summary>
    PlasmaOff,

    /// <summary>Spun longer before the test than the window allows.</summary>
    SpunEarly,

    /// <summary>Another lot.</summary>
    OtherLot,

    /// <summary>Another instrument.</summary>
    OtherInstrument,

    /// <summary>Another instrument or lot that the window covers.</summary>
    AlsoCovered,

    /// <summary>No lot stated.</summary>
    NoLot,

    /// <summary>No instrument stated.</summary>
    NoInstrument,

    /// <summary>No time of the spin stated.</summary>
    NoSpin,

    /// <summary>Tested on a stated day.</summary>
    OnDay,

    /// <summary>No time of collection.</summary>
    NoTime,

    /// <summary>Collected after the test.</summary>
    Negative,

    /// <summary>Collected at a time of day that the clock showed twice.</summary>
    TwiceOnClock,

    /// <summary>A tube that is not fit.</summary>
    UnfitTube,
}

/// <summary>A question whose answer a laboratory information system is tried with.</summary>
/// <param name="Question">The question.</param>
/// <param name="Answer">What <see cref="MayTest"/> answers.</param>
/// <param name="Fact">What it puts to the test.</param>
public sealed record BenchCase(BenchQuestion Question, BenchAnswer Answer, CaseFact Fact)
{
    private static readonly TimeSpan s_minute = TimeSpan.FromMinutes(1);

    /// <summary>A group that a system may hold and no rule names.</summary>
    public const string Unknown = "unknown";

    /// <summary>What stands in a case for a code that is not covered.</summary>
    public const string Another = "another";

    /// <summary>The cases of the rules: every window a minute before, at and after its end, every fact of the scope broken once, the first and last day and those outside.</summary>
    public static ImmutableArray<BenchCase> Of(BenchRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return
        [
            .. rules
                .Rules.Where(rule => rule is { Group: not null, IsOfOthers: false })
                .Reverse()
                .SelectMany(rule => Ends(rules, rule, rule.Group)),
            .. Ends(rules, rules.Rules[0], Unknown),
            .. Past(rules, rules.Rules[0], null),
            .. Past(rules, rules.Rules[^1], rules.OtherGroup),
            .. WithoutTime(rules),
            .. rules.Rules.Where(rule => rule.IsApproved).SelectMany(rule => Broken(rules, rule)),
        ];
    }

    private static IEnumerable<BenchCase> Ends(BenchRules rules, BenchRule rule, string? group)
    {
        ImmutableArray<TimeSpan> ends =
        [
            .. new[] { rule.Today, rule.Limit }.OfType<TimeSpan>().Distinct().Order(),
        ];
        foreach (var end in ends)
        {
            foreach (
                var age in new[] { end - s_minute, end, end + s_minute }.Where(age =>
                    age >= TimeSpan.Zero
                )
            )
            {
                yield return Case(rules, rules.Question(group, age), CaseFact.AllTrue);
            }
        }

        if (rule.Group is not null && ends is [.., var last])
        {
            yield return Case(
                rules,
                rules.Question(group, last + TimeSpan.FromSeconds(1)),
                CaseFact.SecondPast
            );
        }

        if (rule.AsPlasma is { } plasma)
        {
            (TimeSpan Age, TimeSpan Off)[] tubes =
            [
                (plasma - s_minute, rule.Today),
                (plasma, rule.Today),
                (plasma + s_minute, rule.Today),
                (plasma, rule.Today + s_minute),
            ];
            foreach (var (age, off) in tubes)
            {
                yield return Case(
                    rules,
                    rules.Question(group, age) with
                    {
                        Spun = off,
                        Separated = off,
                    },
                    CaseFact.PlasmaOff
                );
            }
        }
    }

    private static IEnumerable<BenchCase> Past(BenchRules rules, BenchRule rule, string? group) =>
        [
            Case(rules, rules.Question(group, rule.Today), CaseFact.AllTrue),
            Case(rules, rules.Question(group, rule.Today + s_minute), CaseFact.AllTrue),
        ];

    private static IEnumerable<BenchCase> WithoutTime(BenchRules rules)
    {
        var group = rules.Rules[^2].Group;
        var unknown = rules.Question(group, null);
        yield return Case(rules, unknown, CaseFact.NoTime);
        yield return Case(
            rules,
            unknown with
            {
                Waited = TimeSpan.FromMinutes(-3),
            },
            CaseFact.Negative
        );
        yield return Case(rules, unknown, CaseFact.TwiceOnClock);
        yield return Case(
            rules,
            rules.Question(group, s_minute) with
            {
                Unfit = "clotted",
            },
            CaseFact.UnfitTube
        );
    }

    private static IEnumerable<BenchCase> Broken(BenchRules rules, BenchRule rule)
    {
        // Between today's rule and the end of the window only the window answers.
        var age = rule.Limit ?? rule.Today;
        var question = rules.Question(rule.Group, age);
        if (rules.Any.Handling?.Storage.SpinToTest is { } longest)
        {
            yield return Case(rules, question with { Spun = age - longest }, CaseFact.AlsoCovered);
            yield return Case(
                rules,
                question with
                {
                    Spun = age - longest - s_minute,
                },
                CaseFact.SpunEarly
            );
            yield return Case(rules, question with { Spun = null }, CaseFact.NoSpin);
        }

        foreach (var lot in rules.Scope.Lots.Skip(1))
        {
            yield return Case(rules, question with { Lot = lot }, CaseFact.AlsoCovered);
        }

        foreach (var instrument in rules.Scope.Instruments.Skip(1))
        {
            yield return Case(
                rules,
                question with
                {
                    Instrument = instrument,
                },
                CaseFact.AlsoCovered
            );
        }

        yield return Case(rules, question with { Lot = Another }, CaseFact.OtherLot);
        yield return Case(rules, question with { Lot = null }, CaseFact.NoLot);
        yield return Case(rules, question with { Instrument = Another }, CaseFact.OtherInstrument);
        yield return Case(rules, question with { Instrument = null }, CaseFact.NoInstrument);
        DateOnly?[] days =
        [
            rules.From.AddDays(-1),
            rules.From,
            rules.Until,
            rules.Until?.AddDays(1),
        ];
        foreach (var day in days.OfType<DateOnly>())
        {
            yield return Case(rules, question with { Day = day }, CaseFact.OnDay);
        }
    }

    private static BenchCase Case(BenchRules rules, BenchQuestion question, CaseFact fact) =>
        new(question, rules.Answer(question), fact);
}
