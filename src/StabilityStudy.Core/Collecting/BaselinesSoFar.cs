namespace StabilityStudy.Core.Collecting;

/// <summary>The baseline of a specimen so far.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="IsValid">Whether it is one.</param>
/// <param name="Value">Its number; null where it is none.</param>
internal readonly record struct BaselineSoFar(string Specimen, bool IsValid, decimal? Value);

/// <summary>The baselines of an analyte and group so far.</summary>
/// <param name="Analyte">Analyte.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Specimens">Each specimen.</param>
internal sealed record BaselinesSoFar(
    string Analyte,
    string Group,
    ImmutableArray<BaselineSoFar> Specimens
)
{
    /// <summary>Those of one storage.</summary>
    public static BaselinesSoFar Of(FoundBaselines found) =>
        new(
            found.Context.Analyte.Id,
            found.Context.Group.Id,
            [
                .. found.Draws.Zip(
                    found.Found,
                    (draw, baseline) =>
                        new BaselineSoFar(
                            draw.Specimen,
                            baseline.Status == PairStatus.Compared,
                            (baseline.Measurement?.Result as MeasuredResult)?.Value
                        )
                ),
            ]
        );

    /// <summary>Those of every storage, a specimen of several storages once.</summary>
    /// <param name="storages">Those of each storage.</param>
    public static BaselinesSoFar OfAllStorages(IEnumerable<BaselinesSoFar> storages)
    {
        ImmutableArray<BaselinesSoFar> all = [.. storages];
        return all is [var only]
            ? only
            : all[0] with
            {
                Specimens =
                [
                    .. all.SelectMany(item => item.Specimens)
                        .DistinctBy(baseline => baseline.Specimen),
                ],
            };
    }
}
