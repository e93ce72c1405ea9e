using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about what study.toml says of tubes, spinning, storage and thawing.</summary>
internal static class HandlingQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind CitrateNotAsPlanned = Kinds.Add("citrate-not-as-planned", NotAsPlanned, "the tubes held another concentration of citrate than planned, or than the usual 3.2 %", "correct it; if it is right, the conclusion holds for such tubes only");
    internal static readonly QueryKind SpinNotAsPlanned = Kinds.Add("spin-not-as-planned", NotAsPlanned, "tubes were spun otherwise than planned", "correct it; if it is right, record a deviation in study.toml");
    internal static readonly QueryKind ResidualPlatelets = Kinds.Add("residual-platelets", Specimen, "more platelets were left in the plasma than the protocol or common practice allows: they neutralize heparin, and break when frozen", "check the centrifuge and count again; record what was done in a deviation");
    internal static readonly QueryKind TemperatureNotAsPlanned = Kinds.Add("temperature-not-as-planned", Specimen, "a storage was colder or warmer than the protocol allows", "find out which tubes waited then, and record it in a deviation");
    internal static readonly QueryKind ThawNotAsPlanned = Kinds.Add("thaw-not-as-planned", NotAsPlanned, "portions were thawed otherwise than planned", "correct it; if it is right, record a deviation in study.toml");
    // csharpier-ignore-end
}
