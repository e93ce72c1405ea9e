using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Planning;

/// <summary>The chances of a planned time point on its own, were its mean change this.</summary>
/// <param name="ShareOfExpected">The supposed change as a share of the expected one.</param>
/// <param name="MeanChangePercent">The supposed change, percent of the baseline.</param>
/// <param name="Together">Simulated chance that all criteria are met.</param>
/// <param name="ByCriterion">Chance of each; empty where nobody asked.</param>
/// <param name="Costs">What kept criteria from being met, most frequent first; a study can have several. Empty where nobody asked.</param>
public sealed record ChanceAtChange(
    double ShareOfExpected,
    double MeanChangePercent,
    CharacteristicPoint Together,
    ImmutableArray<CriterionChance> ByCriterion,
    ImmutableArray<CostRate> Costs
);

/// <summary>The chance that one criterion is met.</summary>
/// <param name="Criterion">Its key.</param>
/// <param name="Simulated">In the simulated studies, with what days and runs share.</param>
/// <param name="Exact">By its formula, each specimen for itself; null where there is none.</param>
public sealed record CriterionChance(
    string Criterion,
    CharacteristicPoint Simulated,
    double? Exact
);

/// <summary>Simulates studies of a planned time point, each judged by the code that judges a real one.</summary>
internal static class CellChances
{
    private static readonly ImmutableArray<ChanceCost> s_costs = [.. Enum.GetValues<ChanceCost>()];

    /// <summary>The chances with one mean change: of every criterion too where that is asked.</summary>
    public static ChanceAtChange At(
        double shareOfExpected,
        double meanPercent,
        CellContext context,
        SupposedResults supposed,
        PlanRequest request
    ) =>
        request.ByCriterion
            ? ByCriterion(
                shareOfExpected,
                meanPercent,
                context,
                supposed,
                request.Number,
                request.Seed
            )
            : new(
                shareOfExpected,
                meanPercent,
                Together(meanPercent, context, supposed, request.Number, request.Seed),
                [],
                []
            );

    /// <summary>The chance of all criteria together: the same studies as with each criterion, and fewer computations, because a study is over with the first criterion that is not met.</summary>
    public static CharacteristicPoint Together(
        double meanPercent,
        CellContext context,
        SupposedResults supposed,
        StudyNumber number,
        ulong seed
    )
    {
        var timePoints = CriterionSetCharacteristic.Needed(context);
        return StagedSimulation.Rates(
            meanPercent,
            1,
            number,
            seed,
            CriterionSetCharacteristic.ConfidenceLevel,
            random =>
                CriterionSetCharacteristic.IsSupported(
                    context,
                    timePoints,
                    supposed,
                    meanPercent,
                    random
                )
                    ? 1UL
                    : 0
        )[0];
    }

    private static ChanceAtChange ByCriterion(
        double shareOfExpected,
        double meanPercent,
        CellContext context,
        SupposedResults supposed,
        StudyNumber number,
        ulong seed
    )
    {
        var timePoints = CriterionSetCharacteristic.Needed(context);
        var criteria = context.Applying;
        var rates = StagedSimulation.Rates(
            meanPercent,
            1 + criteria.Length + s_costs.Length,
            number,
            seed,
            CriterionSetCharacteristic.ConfidenceLevel,
            random => EventsOf(Judge(context, timePoints, supposed, meanPercent, random))
        );
        var exact = CriterionPower.Of(context, supposed, meanPercent);
        return new(
            shareOfExpected,
            meanPercent,
            rates[0],
            [
                .. criteria.Select(
                    (item, i) =>
                        new CriterionChance(
                            item.Criterion.Id,
                            rates[1 + i],
                            exact
                                .FirstOrDefault(found => found.Criterion == item.Criterion.Id)
                                ?.Power
                        )
                ),
            ],
            [
                .. s_costs
                    .Select(
                        (cost, i) => new CostRate(cost, rates[1 + criteria.Length + i].Probability)
                    )
                    .Where(item => item.Rate > 0)
                    .OrderByDescending(item => item.Rate),
            ]
        );
    }

    private static ImmutableArray<CriterionResult> Judge(
        CellContext context,
        ImmutableArray<TimePoint> timePoints,
        SupposedResults supposed,
        double meanPercent,
        SeededRandom random
    )
    {
        var drawn = CriterionSetCharacteristic.Draw(
            context,
            timePoints,
            supposed,
            meanPercent,
            random
        );
        return CellEvaluation.Evaluate(drawn[^1], context with { Earlier = drawn[..^1] });
    }

    /// <summary>A bit each: all criteria together, every criterion, everything that can cost the chance.</summary>
    private static ulong EventsOf(ImmutableArray<CriterionResult> results)
    {
        var events = CellEvaluation.Conclude(results) == Conclusion.Supported ? 1UL : 0;
        for (var i = 0; i < results.Length; i++)
        {
            events |= results[i].Verdict == Verdict.Met ? 1UL << (1 + i) : 0;
            if (ChanceCosts.Of(results[i]) is { } cost)
            {
                events |= 1UL << (1 + results.Length + s_costs.IndexOf(cost));
            }
        }

        return events;
    }
}
