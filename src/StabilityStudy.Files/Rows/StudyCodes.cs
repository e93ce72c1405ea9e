using System.Collections.Frozen;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Gathers from protocol and study facts what the rows may refer to.</summary>
internal static class StudyCodes
{
    /// <summary>Gathers the codes.</summary>
    public static KnownCodes From(ProtocolDraft? protocol, FactsDraft? facts, FlagSet flags) =>
        new(
            Groups: new(
                "group",
                "protocol.toml",
                protocol?.Groups.Codes(GroupKeys.Id, group => group.Id)
            ),
            Storages: new(
                "storage",
                "protocol.toml",
                protocol?.Storages.Codes(StorageKeys.Id, storage => storage.Id)
            ),
            Analytes: new(
                "analyte",
                "protocol.toml",
                protocol?.Analytes.Codes(AnalyteKeys.Id, analyte => analyte.Id)
            ),
            AnalyteById: ById(protocol),
            TimePoints: protocol is not null && protocol.Root.IsSound(ProtocolKeys.TimePoints)
                ? protocol.TimePoints
                : null,
            OccasionByWord: (protocol?.TimePoints ?? [])
                .Distinct()
                .Select(point => new TestOccasion(point))
                .Prepend(default)
                .ToFrozenDictionary(occasion => occasion.ToString(), StringComparer.Ordinal),
            People: new("person", "study.toml", facts?.People.Codes(PersonKeys.Code, p => p.Code)),
            Instruments: new(
                "instrument",
                "study.toml",
                Listed(
                    facts,
                    FactsKeys.Instruments,
                    facts?.Instruments.Codes(InstrumentKeys.Id, i => i.Id)
                )
            ),
            Lots: new(
                "lot",
                "study.toml",
                Listed(facts, FactsKeys.Lots, facts?.Lots.Codes(LotKeys.Id, lot => lot.Id))
            ),
            Flags: flags,
            Times: new LocalTimes(
                facts?.TimeZone?.Rules,
                facts is not null
                    && (
                        !facts.Root.Has(FactsKeys.TimeZone)
                        || facts.Root.IsSound(FactsKeys.TimeZone)
                    )
            )
        )
        {
            CodesAreDeclared = facts?.CodesDeclared is not null,
        };

    private static FrozenDictionary<string, Analyte> ById(ProtocolDraft? protocol) =>
        (protocol?.Analytes.Items ?? [])
            .Where(item =>
                item.Table.Has(AnalyteKeys.Categories)
                    ? item.Table.IsSound(AnalyteKeys.Categories)
                    : item.Table.IsSound(AnalyteKeys.Unit)
                        && item.Table.IsSound(AnalyteKeys.Decimals)
            )
            .DistinctBy(item => item.Value.Id)
            .ToFrozenDictionary(item => item.Value.Id, item => item.Value);

    // A list that is not given at all is empty, not unknown: a row must not name what nobody listed.
    private static ImmutableArray<string>? Listed(
        FactsDraft? facts,
        TableKey key,
        ImmutableArray<string>? codes
    ) => facts is not null && !facts.Root.Has(key) ? [] : codes;
}
