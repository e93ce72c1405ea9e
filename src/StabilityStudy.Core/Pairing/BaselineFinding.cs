namespace StabilityStudy.Core.Pairing;

/// <summary>The baseline of a draw and whether it is one.</summary>
/// <param name="Tube">Its tube; null when there is none.</param>
/// <param name="Measurement">What the tube gave; null when there is no tube.</param>
/// <param name="Status"><see cref="PairStatus.Compared"/> for a valid baseline, else the status that it gives all pairs of the draw.</param>
/// <param name="Reason">Why it is not valid; empty when it is.</param>
internal sealed record BaselineFinding(
    TubeRow? Tube,
    Measurement? Measurement,
    PairStatus Status,
    string Reason
)
{
    /// <summary>Finds the baseline of a draw.</summary>
    public static BaselineFinding Of(
        Draw draw,
        PairContext context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var chosen = Replicates.Choose(draw, new TestOccasion(null), context, queries);
        var tube = chosen is null ? null : draw.Tube(chosen.Row.Tube);
        var measurement =
            chosen is null || tube is null ? null : chosen.Measure(tube, context.Protocol);
        if (context.Protocol.RepeatDraws != RepeatDraws.OneCluster && !draw.Drawn.IsFirstOfSubject)
        {
            return new(
                tube,
                measurement,
                PairStatus.Ineligible,
                $"subject {draw.First.Subject} is already in this group with an earlier specimen"
            );
        }

        if (chosen is null || tube is null)
        {
            return new(null, null, PairStatus.BaselineInvalid, "no baseline result");
        }

        var unusable = EligibilityRules.BaselineProblem(
            WithHematocrit(tube, draw),
            context.Storage,
            context.Protocol.Eligibility
        );
        if (unusable is not null)
        {
            return new(tube, measurement, PairStatus.Ineligible, unusable);
        }

        var invalid =
            Untimely(chosen, tube, context)
            ?? (
                chosen.Row.IsFlaggedAsFailed
                    ? "error flag " + chosen.Row.Flag + " on the baseline"
                    : null
            )
            ?? (chosen.Row.Result is MissingResult ? "no baseline result" : null);
        return new(
            tube,
            measurement,
            invalid is null ? PairStatus.Compared : PairStatus.BaselineInvalid,
            invalid ?? ""
        );
    }

    private static string? Untimely(ChosenResult chosen, TubeRow tube, PairContext context)
    {
        foreach (var row in chosen.Rows)
        {
            if (TimingRules.BaselineProblem(tube, row, context) is { } problem)
            {
                return problem;
            }
        }

        return null;
    }

    /// <summary>The hematocrit is that of the draw, measured in whichever of its tubes.</summary>
    private static TubeRow WithHematocrit(TubeRow tube, Draw draw) =>
        tube.HematocritPercent is null
            ? tube with
            {
                HematocritPercent = draw.Drawn.Tubes.Max(item => item.HematocritPercent),
            }
            : tube;
}
