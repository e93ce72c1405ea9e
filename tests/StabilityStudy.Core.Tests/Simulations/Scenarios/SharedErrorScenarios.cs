using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Runs, baselines, calibration and losses, with the truth exactly at the limit; and the power that the rules against them leave.</summary>
internal static class SharedErrorScenarios
{
    public const string Runs = "Mean change, runs as clusters";
    public const string Origin = "Since collection, 7.5 % by a logarithmic course";
    public const string Bridging = "Mean change, calibration bridged";
    public const string Shares = "Share within, what runs share";
    public const string Losses = "Share within, losses that may hide failures";
    public const string Powers = "Power of the mean under the rules on runs, origin and bridging";

    private static readonly SimulatedStudy s_both = SimulatedStudy.Of(
        [SmallProtocol.Bias, SmallProtocol.Each],
        SmallProtocol.MeanCriterion,
        SmallProtocol.EachCriterion
    );

    private static Collection Days(int days, int specimens = 40) => Collection.On(days, specimens);

    public static IEnumerable<Scenario> All =>
        [
            .. OfRuns,
            .. OfOrigin,
            .. OfBridging,
            .. OfShares,
            .. OfLosses,
            .. OfLossesOfMeans,
            .. OfPower,
            .. OfLevels,
        ];

    /// <summary>Delayed tubes saved up, runs that cross, uneven days, odd specimens.</summary>
    public static IEnumerable<Scenario> OfRuns =>
        [
            .. new[] { 1, 2, 5, 10 }.Select(runs => DelayedRuns(runs, 2)),
            DelayedRuns(5, 3),
            .. new[] { (5, 5), (8, 5), (10, 5), (10, 8) }.Select(size =>
                Crossed(size.Item1, size.Item2)
            ),
            new RuleScenarios(Collection.Uneven(20, 5, 5, 5, 5)) { RunSd = 3 }.As(
                Runs,
                "run SD 3 %",
                Reading.Controlled
            ),
            OddSpecimens(0.025, 14, 40),
            OddSpecimens(0.05, 18, 40),
            OddSpecimens(0.10, 25, 40),
        ];

    public static Scenario DelayedRuns(int runs, double runSd) =>
        new RuleScenarios(Days(10).InDelayedRuns(runs)) { RunSd = runSd }.As(
            Runs,
            FormattableString.Invariant($"run SD {runSd} %"),
            Reading.Controlled
        );

    public static Scenario Crossed(int baselineRuns, int delayedRuns) =>
        new RuleScenarios(Collection.Crossed(baselineRuns, delayedRuns, 40)) { RunSd = 2 }.As(
            Runs,
            "run SD 2 %",
            Reading.Controlled
        );

    public static Scenario OddSpecimens(double share, double percent, int specimens) =>
        new RuleScenarios(Days(10, specimens))
        {
            MeanPercent = MeanScenarios.Limit - (share * percent),
            SpecimenSd = 2,
            Odd = (share, percent),
        }.As(
            Runs,
            FormattableString.Invariant($"{100 * share:0.#} % of specimens at +{percent} %"),
            Reading.Controlled
        );

    public static IEnumerable<Scenario> OfOrigin =>
        from hours in new[] { 6.0, 24 }
        from minutes in new[] { 15.0, 30, 60 }
        from collected in new[] { false, true }
        select SinceCollection(minutes, hours, collected);

    public static Scenario SinceCollection(double minutes, double hours, bool byRule) =>
        new RuleScenarios(Days(10))
        {
            SinceCollection = (minutes / 60, hours),
            Study = byRule ? SimulatedStudy.OfMean.SinceCollection() : SimulatedStudy.OfMean,
        }.As(
            Origin,
            FormattableString.Invariant(
                $"baselines at {minutes} min, delay {hours} h{(byRule ? "" : "; counted from the baseline, and read as since collection")}"
            ),
            byRule ? Reading.Controlled : Reading.NotControlled
        );

    public static IEnumerable<Scenario> OfBridging =>
        from truth in new[] { (7.5, -2.0), (7.5, -3), (8.5, -3) }
        from results in new[] { 0, 2 }
        select Moved(truth.Item1, truth.Item2, results);

    public static Scenario Moved(double truth, double runs, int results) =>
        new RuleScenarios(Days(10))
        {
            MeanPercent = truth,
            DelayedRunsPercent = runs,
            BridgingResults = results,
        }.As(
            Bridging,
            FormattableString.Invariant(
                $"true change {truth} %, delayed runs {runs} %, {(results == 0 ? "no bridging plasma" : $"{results} bridging results a run")}"
            ),
            results == 0 ? Reading.NotControlled : Reading.Controlled
        );

    public static IEnumerable<Scenario> OfShares =>
        [
            .. from days in new[] { 5, 10 }
            from runSd in new[] { 0.0, 1.4, 2, 3 }
            select AtShare(Days(days), runSd),
            AtShare(Days(10).InDelayedRuns(5), 3),
            ShareSinceCollection(15),
            ShareSinceCollection(60),
        ];

    public static Scenario AtShare(Collection collection, double runSd) =>
        new RuleScenarios(collection) { SpecimenSd = 2, RunSd = runSd }
            .AtShare(0.85)
            .As(
                Shares,
                FormattableString.Invariant($"true share 85 %, run SD {runSd} %"),
                Reading.Controlled
            );

    public static Scenario ShareSinceCollection(double minutes) =>
        (
            new RuleScenarios(Days(10)) { SinceCollection = (minutes / 60, 6) }.AtShare(0.85) with
            {
                // The share since collection is that of the specimens' own changes and their imprecision, counted from the value at collection.
                Study = ShareScenarios.Exact.SinceCollection(),
            }
        ).As(
            Shares,
            FormattableString.Invariant(
                $"true share 85 % since collection, baselines at {minutes} min"
            ),
            Reading.Controlled
        );

    public static IEnumerable<Scenario> OfLosses =>
        from lost in new[] { 0.5, 0.75, 1 }
        from specimens in new[] { 40, 80 }
        select Lost(lost, specimens);

    /// <summary>15 % of specimens are unstable, and so many of them give no result.</summary>
    public static Scenario Lost(double lost, int specimens) =>
        new RuleScenarios(Days(10, specimens))
        {
            MeanPercent = 0,
            SpecimenSd = 2,
            Unstable = (0.15, lost),
            Study = ShareScenarios.Exact,
        }.As(
            Losses,
            FormattableString.Invariant(
                $"15 % of specimens at +30 %, {100 * lost} % of them lost as too little plasma"
            ),
            Reading.Controlled
        );

    /// <summary>The mean of all specimens lies at the limit, those without a result among them; the mean is of the others, and the share counts every loss outside.</summary>
    public static IEnumerable<Scenario> OfLossesOfMeans =>
        [
            .. new[] { 0.025, 0.05 }.Select(MeanWithLossesAtRandom),
            .. new[] { 0.025, 0.05 }.Select(MeanWithoutTheUnstable),
        ];

    public const string MeanLosses = "Mean and share together, losses";

    public static Scenario MeanWithLossesAtRandom(double lost) =>
        new RuleScenarios(Days(10)) { LostAtRandom = lost, Study = s_both }.As(
            MeanLosses,
            FormattableString.Invariant($"{100 * lost} % lost, whatever they are"),
            Reading.Controlled
        );

    /// <summary>All the unstable are lost, and the change of the others makes up the mean of all.</summary>
    public static Scenario MeanWithoutTheUnstable(double unstable) =>
        new RuleScenarios(Days(10))
        {
            MeanPercent = (MeanScenarios.Limit - (unstable * 30)) / (1 - unstable),
            Unstable = (unstable, 1),
            Study = s_both,
        }.As(
            MeanLosses,
            FormattableString.Invariant(
                $"{100 * unstable} % of specimens at +30 %, all of them lost; the mean of all at the limit"
            ),
            Reading.NotControlled
        );

    public const string Levels = "Mean and share together, change that depends on the level";

    public static IEnumerable<Scenario> OfLevels =>
        [
            .. from specimens in new[] { 20, 40, 60, 80 }
            from spread in new[] { 0.40, 0.35 }
            from byRule in new[] { false, true }
            select Heparin(specimens, byRule, spread),
            .. from percent in new[] { 2.0, 4 }
            from specimens in new[] { 40, 80 }
            select WideRange(percent, specimens),
        ];

    /// <summary>Heparin: −7.5 % at 90 s, none at 30 s, more above.</summary>
    /// <param name="specimens">How many specimens.</param>
    /// <param name="byRule">Whether the doubt about the level counts.</param>
    /// <param name="spread">SD of the natural logarithm of the levels. In a narrower range the doubt sees less.</param>
    public static Scenario Heparin(int specimens, bool byRule, double spread) =>
        new RuleScenarios(Days(10, specimens))
        {
            MeanPercent = -MeanScenarios.Limit,
            MedianLevel = 60,
            LevelSpread = spread,
            ByLevel = (30, 90),
            LevelDoubtAside = !byRule,
            Study = s_both,
        }.As(
            Levels,
            FormattableString.Invariant(
                $"−7.5 % at 90 s, none at 30 s, median 60 s, SD of ln x {spread:0.00}{(byRule ? "" : "; without the doubt about the level")}"
            ),
            byRule && spread >= 0.40 ? Reading.Controlled : Reading.NotControlled
        );

    /// <summary>The same change at every level of a wide range: what the doubt costs.</summary>
    public static Scenario WideRange(double percent, int specimens) =>
        new RuleScenarios(Days(10, specimens))
        {
            MeanPercent = percent,
            LevelSpread = 0.40,
            Study = s_both,
        }.As(
            Levels,
            FormattableString.Invariant($"{percent} % at every level, SD of ln x 0.40"),
            Reading.Power
        );

    public static IEnumerable<Scenario> OfPower =>
        [
            .. new[] { 0.0, 2, 4 }.Select(percent => Power(percent, odd: false)),
            .. new[] { 0.0, 2, 4 }.Select(percent => Power(percent, odd: true)),
            new RuleScenarios(Days(10))
            {
                MeanPercent = 4,
                SinceCollection = (0.25, 6),
                Study = SimulatedStudy.OfMean.SinceCollection(),
            }.As(Powers, "change of 4 % since collection, baselines at 15 min", Reading.Power),
            new RuleScenarios(Days(10)) { MeanPercent = 4, BridgingResults = 2 }.As(
                Powers,
                "change of 4 %, 2 bridging results a run",
                Reading.Power
            ),
        ];

    /// <summary>Mean and share together, SD of the specimens' own changes 3 % or, with odd specimens, 2 %.</summary>
    public static Scenario Power(double percent, bool odd) =>
        new RuleScenarios(Days(10))
        {
            MeanPercent = percent,
            SpecimenSd = odd ? 2 : 3,
            Odd = odd ? (0.025, 14) : default,
            Study = s_both,
        }.As(
            Powers,
            FormattableString.Invariant(
                $"mean and share together, change of {percent} %{(odd ? ", 2.5 % of specimens at a further +14 %" : "")}"
            ),
            Reading.Power
        );
}
