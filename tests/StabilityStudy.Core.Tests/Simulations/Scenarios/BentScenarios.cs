using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Changes that no straight line of delayed result on baseline describes, judged at decision levels: patients on heparin, median 60 s, SD of ln x 0.35.</summary>
internal static class BentScenarios
{
    private const string Section = "Change at a decision level, bent relation";

    /// <summary>The jackknife fits a line for each specimen and cluster left out.</summary>
    private const int WorkOfJackknife = 6;

    public static IEnumerable<Scenario> All =>
        new[] { 40, 80 }.SelectMany(n =>
            new[] { false, true }.SelectMany(byRule =>
                new[]
                {
                    Steeper(n, byRule),
                    Threshold(-MeanScenarios.Limit, n, byRule),
                    Threshold(-10, n, byRule),
                    Same(0, n, byRule),
                    Same(-2, n, byRule),
                    Same(-4, n, byRule),
                }
            )
        );

    /// <summary>The percent change grows with the level itself, so the delayed result with its square.</summary>
    public static Scenario Steeper(int specimens, bool byRule) =>
        Of(
            specimens,
            byRule,
            -MeanScenarios.Limit,
            "−7.5 % at 90 s, none at 30 s, more above; level 90 s",
            Reading.Controlled,
            rules => rules with { ByLevel = (30, 90), Study = At(90) }
        );

    /// <summary>Nothing happens to specimens up to 80 s.</summary>
    public static Scenario Threshold(double percent, int specimens, bool byRule) =>
        Of(
            specimens,
            byRule,
            percent,
            FormattableString.Invariant($"{percent} % above 80 s alone; levels 60 and 90 s"),
            Reading.Controlled,
            rules => rules with { OnlyAbove = 80, Study = At(60, 90) }
        );

    /// <summary>The same change at every level: what the doubt costs.</summary>
    public static Scenario Same(double percent, int specimens, bool byRule) =>
        Of(
            specimens,
            byRule,
            percent,
            FormattableString.Invariant($"{percent} % at every level; levels 60 and 90 s"),
            Reading.Power,
            rules => rules with { Study = At(60, 90) }
        );

    private static Scenario Of(
        int specimens,
        bool byRule,
        double percent,
        string data,
        Reading reading,
        Func<RuleScenarios, RuleScenarios> change
    ) =>
        change(
                new RuleScenarios(Collection.On(10, specimens))
                {
                    MeanPercent = percent,
                    MedianLevel = 60,
                    LevelSpread = 0.35,
                    LevelDoubtAside = !byRule,
                }
            )
            .As(
                Section,
                data + (byRule ? "" : "; by the line alone"),
                byRule || reading == Reading.Power ? reading : Reading.NotControlled
            ) with
        {
            Work = WorkOfJackknife,
        };

    private static SimulatedStudy At(params ImmutableArray<decimal> levels) =>
        SimulatedStudy
            .Of(
                [SmallProtocol.Bias],
                new DecisionLevelCriterion("levels", [new("aPTT", "bias")], [], 0.90, levels)
            )
            .Analyte(analyte => analyte with { BetweenRunCvPercent = 2, Decimals = 4 });
}
