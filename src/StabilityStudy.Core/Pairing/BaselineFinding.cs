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
        bool isFirstOfSubject,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var chosen = Replicates.Choose(draw, new TestOccasion(null), context, queries);
        var tube = chosen is null ? null : draw.Tube(chosen.Row.Tube);
        var measurement =
            chosen is null || tube is null ? null : chosen.Measure(tube, context.Protocol);
        if (!isFirstOfSubject)
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

        // The hematocrit is that of the draw, measured in whichever of its tubes.
        var unusable = EligibilityRules.BaselineProblem(
            tube with
            {
                HematocritPercent =
                    tube.HematocritPercent ?? draw.Tubes.Max(item => item.HematocritPercent),
            },
            context.Storage,
            context.Protocol.Eligibility
        );
        if (unusable is not null)
        {
            return new(tube, measurement, PairStatus.Ineligible, unusable);
        }

        var invalid =
            chosen
                .Rows.Select(row => TimingRules.BaselineProblem(tube, row, context))
                .FirstOrDefault(problem => problem is not null)
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
}
