using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>What the rows may refer to, as far as protocol and study facts could be read.</summary>
/// <param name="Groups">Patient groups.</param>
/// <param name="Storages">Storages.</param>
/// <param name="Analytes">Codes of the analytes.</param>
/// <param name="AnalyteById">The analytes that could be read.</param>
/// <param name="TimePoints">Planned delays; null when they could not be read.</param>
/// <param name="OccasionByWord">"baseline" and the time points as the protocol's words.</param>
/// <param name="People">Codes of persons.</param>
/// <param name="Instruments">Instruments.</param>
/// <param name="Lots">Lots.</param>
/// <param name="Flags">What the instrument's flags mean.</param>
/// <param name="Times">How times without an offset are read.</param>
internal sealed record KnownCodes(
    CodeSet Groups,
    CodeSet Storages,
    CodeSet Analytes,
    FrozenDictionary<string, Analyte> AnalyteById,
    ImmutableArray<TimePoint>? TimePoints,
    FrozenDictionary<string, TestOccasion> OccasionByWord,
    CodeSet People,
    CodeSet Instruments,
    CodeSet Lots,
    FlagSet Flags,
    LocalTimes Times
)
{
    /// <summary>Whether somebody declared that codes which look like numbers of records or telephones name nobody.</summary>
    public bool CodesAreDeclared { get; init; }
}
