using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>The chance that a time point and every earlier one of its row are supported: the same specimens are drawn at all of them.</summary>
internal static class JointChances
{
    /// <summary>Of every time point; empty where one of them cannot be simulated.</summary>
    /// <param name="contexts">The time points of a row, ascending.</param>
    /// <param name="planned">The same with their expected changes.</param>
    /// <param name="specimens">Specimens at each.</param>
    /// <param name="days">Days.</param>
    /// <param name="request">What is asked.</param>
    public static ImmutableArray<JointChance> Of(
        ImmutableArray<CellContext> contexts,
        ImmutableArray<PlannedTimePoint> planned,
        int specimens,
        int days,
        PlanRequest request
    )
    {
        var last = contexts[^1];
        var supposed = SupposedFromPlan.Of(
            last,
            specimens,
            days,
            planned[^1].Expected.SpecimenSdPercent,
            out _
        );
        var shares = planned.Select(point => point.Chances).MinBy(chances => chances.Length);
        return supposed is null
            ? []
            :
            [
                .. shares
                    .Select(item => item.ShareOfExpected)
                    .SelectMany(share => At(share, contexts, planned, supposed.Results, request)),
            ];
    }

    private static IEnumerable<JointChance> At(
        double share,
        ImmutableArray<CellContext> contexts,
        ImmutableArray<PlannedTimePoint> planned,
        SupposedResults supposed,
        PlanRequest request
    )
    {
        ImmutableArray<DrawnTimePoint> drawnAt =
        [
            .. planned.Select(point => new DrawnTimePoint(
                point.TimePoint,
                share * (point.Expected.Percent ?? 0),
                point.Expected.SpecimenSdPercent
            )),
        ];
        var rates = StagedSimulation.Rates(
            share,
            contexts.Length,
            request.Number with
            {
                Tolerance = 0,
            },
            request.Seed,
            CriterionSetCharacteristic.ConfidenceLevel,
            random =>
            {
                var pairs = CriterionSetCharacteristic.Draw(
                    contexts[^1],
                    drawnAt,
                    supposed,
                    random
                );
                var supported = contexts
                    .TakeWhile(
                        (context, i) =>
                            CellEvaluation.IsSupported(
                                pairs[i],
                                context with
                                {
                                    Earlier = pairs[..i],
                                }
                            )
                    )
                    .Count();
                return (1UL << supported) - 1;
            }
        );
        return contexts.Select((context, i) => new JointChance(context.TimePoint, share, rates[i]));
    }
}
