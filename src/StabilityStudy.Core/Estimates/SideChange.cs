namespace StabilityStudy.Core.Estimates;

/// <summary>
/// Specimens whose two results lie on different sides of a decision level: what a delay could have meant for the patient. Description; a reclassification criterion decides. A result at the level is on its
/// upper side.
/// </summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Counted">Specimens of which both sides are known.</param>
/// <param name="Up">Codes of those from below the level to it or above.</param>
/// <param name="Down">Codes of those from the level or above to below.</param>
/// <param name="ExpectedFromNoise">Number expected to change side from imprecision alone; null when the protocol states none.</param>
public sealed record SideChange(
    decimal Level,
    int Counted,
    ImmutableArray<string> Up,
    ImmutableArray<string> Down,
    double? ExpectedFromNoise
)
{
    /// <summary>Counted specimens whose baseline is below the level.</summary>
    public required int BaselinesBelow { get; init; }

    /// <summary>Whether enough baselines lie on either side for none to change to say something.</summary>
    public bool IsCovered =>
        BaselinesBelow >= LevelCoverage.FewestOnEitherSide
        && Counted - BaselinesBelow >= LevelCoverage.FewestOnEitherSide;

    /// <summary>Whether more changed than one beyond what imprecision alone predicts.</summary>
    public bool IsBeyondNoise => Changed > (ExpectedFromNoise ?? 0) + 1;

    /// <summary>Specimens that changed the side.</summary>
    public int Changed => Up.Length + Down.Length;

    /// <summary>One for each decision level of the analyte.</summary>
    internal static ImmutableArray<SideChange> Of(
        ImmutableArray<PairRecord> pairs,
        CellContext context
    ) => [.. context.Analyte.DecisionLevels.Select(level => At(level, pairs, context))];

    private static SideChange At(
        decimal level,
        ImmutableArray<PairRecord> pairs,
        CellContext context
    )
    {
        var counted = ImmutableArray.CreateBuilder<PairRecord>(pairs.Length);
        var up = ImmutableArray.CreateBuilder<string>();
        var down = ImmutableArray.CreateBuilder<string>();
        var below = 0;
        foreach (var pair in pairs)
        {
            if (
                pair.Status is not (PairStatus.Compared or PairStatus.BeyondInterval)
                || ResultRange.Of(pair.Baseline?.Result)?.Reaches(level) is not { } isAboveBefore
                || ResultRange.Of(pair.Delayed?.Result)?.Reaches(level) is not { } isAboveAfter
            )
            {
                continue;
            }

            counted.Add(pair);
            below += isAboveBefore ? 0 : 1;
            if (isAboveBefore != isAboveAfter)
            {
                (isAboveAfter ? up : down).Add(pair.Specimen);
            }
        }

        return new SideChange(
            level,
            counted.Count,
            up.DrainToImmutable(),
            down.DrainToImmutable(),
            ExpectedChanges.Number(counted.DrainToImmutable(), [level], context)
        )
        {
            BaselinesBelow = below,
        };
    }
}
