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
        var counted = pairs
            .Where(pair => pair.Status is PairStatus.Compared or PairStatus.BeyondInterval)
            .Select(pair =>
                (
                    Pair: pair,
                    Before: ResultRange.Of(pair.Baseline?.Result)?.Reaches(level),
                    After: ResultRange.Of(pair.Delayed?.Result)?.Reaches(level)
                )
            )
            .Where(item => item is { Before: not null, After: not null })
            .ToImmutableArray();
        return new SideChange(
            level,
            counted.Length,
            [
                .. counted
                    .Where(item => item is { Before: false, After: true })
                    .Select(item => item.Pair.Specimen),
            ],
            [
                .. counted
                    .Where(item => item is { Before: true, After: false })
                    .Select(item => item.Pair.Specimen),
            ],
            ExpectedChanges.Number([.. counted.Select(item => item.Pair)], [level], context)
        )
        {
            BaselinesBelow = counted.Count(item => item.Before == false),
        };
    }
}
