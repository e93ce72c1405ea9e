namespace StabilityStudy.Core.Pairing;

/// <summary>The draws of one analyte, group and storage with their baselines.</summary>
/// <param name="Context">Which.</param>
/// <param name="Draws">The draws, ordered by code.</param>
/// <param name="Found">The baseline of each.</param>
/// <param name="Queries">What finding them gave rise to.</param>
internal sealed record FoundBaselines(
    PairContext Context,
    ImmutableArray<Draw> Draws,
    ImmutableArray<BaselineFinding> Found,
    ImmutableArray<DataQuery> Queries
);
