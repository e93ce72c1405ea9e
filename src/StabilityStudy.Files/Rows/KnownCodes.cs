using System.Collections.Frozen;
using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

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
    LocalTimes Times
)
{
    /// <summary>Gathers the codes.</summary>
    public static KnownCodes From(ProtocolDraft? protocol, FactsDraft? facts) =>
        new(
            Groups: new("group", "protocol.toml", protocol?.Groups.Codes("id", group => group.Id)),
            Storages: new(
                "storage",
                "protocol.toml",
                protocol?.Storages.Codes("id", storage => storage.Id)
            ),
            Analytes: new(
                "analyte",
                "protocol.toml",
                protocol?.Analytes.Codes("id", analyte => analyte.Id)
            ),
            AnalyteById: ById(protocol),
            TimePoints: protocol is not null && protocol.Root.IsSound("time_points")
                ? protocol.TimePoints
                : null,
            OccasionByWord: (protocol?.TimePoints ?? [])
                .Distinct()
                .Select(point => new TestOccasion(point))
                .Prepend(default)
                .ToFrozenDictionary(occasion => occasion.ToString(), StringComparer.Ordinal),
            People: new("person", "study.toml", facts?.People.Codes("code", p => p.Code)),
            Instruments: new(
                "instrument",
                "study.toml",
                Listed(facts, "instrument", facts?.Instruments.Codes("id", i => i.Id))
            ),
            Lots: new(
                "lot",
                "study.toml",
                Listed(facts, "lot", facts?.Lots.Codes("id", lot => lot.Id))
            ),
            Times: new LocalTimes(
                facts?.TimeZone?.Rules,
                facts is not null
                    && (!facts.Root.Has("time_zone") || facts.Root.IsSound("time_zone"))
            )
        );

    private static FrozenDictionary<string, Analyte> ById(ProtocolDraft? protocol) =>
        (protocol?.Analytes.Items ?? [])
            .Where(item =>
                item.Table.Has("categories")
                    ? item.Table.IsSound("categories")
                    : item.Table.IsSound("unit") && item.Table.IsSound("decimals")
            )
            .DistinctBy(item => item.Value.Id)
            .ToFrozenDictionary(item => item.Value.Id, item => item.Value);

    // A list that is not given at all is empty, not unknown: a row must not name what nobody listed.
    private static ImmutableArray<string>? Listed(
        FactsDraft? facts,
        string key,
        ImmutableArray<string>? codes
    ) => facts is not null && !facts.Root.Has(key) ? [] : codes;
}
