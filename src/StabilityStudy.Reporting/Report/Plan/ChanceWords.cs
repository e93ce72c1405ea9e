using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>Chances in words, always with the number.</summary>
internal static class ChanceWords
{
    /// <summary>What the words mean: "80 % or more: likely; 50 to 79 %: open; …; less: out of reach".</summary>
    public static readonly string Bounds = string.Join(
        "; ",
        ChancesOfSupport.All.Select(
            (word, i) =>
                (
                    i == 0 ? $"{From(word)} % or more"
                    : word == ChanceOfSupport.OutOfReach ? "less"
                    : $"{From(word)} to {From(ChancesOfSupport.All[i - 1]) - 1} %"
                )
                + ": "
                + Word(word)
        )
    );

    /// <summary>A chance in whole percent, rounded down so that a number never reads better than its word.</summary>
    public static string Percent(double chance) =>
        chance < 0.01 ? "below 1 %"
        : chance > 0.99 ? "over 99 %"
        : $"{NumberText.Count(WholePercent(chance))} %";

    /// <summary>What a chance is called.</summary>
    public static string Word(double chance) => Word(ChancesOfSupport.Of(chance));

    /// <summary>The word itself.</summary>
    public static string Word(ChanceOfSupport chance) =>
        chance switch
        {
            ChanceOfSupport.Likely => "likely",
            ChanceOfSupport.Open => "open",
            ChanceOfSupport.Doubtful => "doubtful",
            ChanceOfSupport.Unlikely => "unlikely",
            ChanceOfSupport.OutOfReach => "out of reach",
        };

    /// <summary>A supposed change: "+5.5 %".</summary>
    public static string Change(PlannedChange expected) =>
        expected.Percent is { } percent ? $"{NumberText.Change(percent, 1)} %" : "none found";

    /// <summary>Where the spread comes from.</summary>
    public static string Sd(PlannedChange expected) =>
        $"SD {NumberText.Fixed(expected.SpecimenSdPercent, 1)} % ({expected.SdFrom switch
        {
            SdOrigin.Protocol => "protocol",
            SdOrigin.Pilot => $"{NumberText.Count(expected.PilotPairs)} pairs of the pilot",
            SdOrigin.Supposed => "assumed",
        }})";

    /// <summary>Why a time point is not simulated.</summary>
    public static string Gap(PlanGap gap) =>
        gap switch
        {
            PlanGap.Classes => "results are classes, of which no change can be supposed",
            PlanGap.NoImprecision => "the protocol states no cv_percent",
            PlanGap.NoBaselines => "the protocol states no planned_ranges",
            PlanGap.TooWide => "the stated spread is 50 % or more",
            PlanGap.TooMany => "more specimens or time points than are simulated",
        };

    /// <summary>What keeps a criterion from being met.</summary>
    public static string Of(ChanceCost cost) =>
        cost switch
        {
            ChanceCost.Change => "the mean change itself, with the spread of specimens",
            ChanceCost.Days => "what days and runs share",
            ChanceCost.Skewness => "skewed changes",
            ChanceCost.Share => "single specimens outside their limit",
            ChanceCost.Level => "the change at a decision level",
            ChanceCost.Range => "too few baselines beside a decision level",
            ChanceCost.Sides => "results that change the side of a decision level",
        };

    /// <summary>A percent with a tolerance: "3 points".</summary>
    public static string Tolerance(PlanRequest request) =>
        request.Tolerance >= 0.015
            ? $"{NumberText.Count((int)Math.Round(100 * request.Tolerance))} points"
            : $"{NumberText.Fixed(100 * request.Tolerance, 1)} points";

    private static int From(ChanceOfSupport word) =>
        (int)Math.Round(100 * ChancesOfSupport.From(word));

    private static int WholePercent(double chance) => (int)Math.Floor((100 * chance) + 1e-9);
}
