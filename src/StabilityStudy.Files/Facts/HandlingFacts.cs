using StabilityStudy.Core.Study;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>What study.toml says of specimens and how they were handled, as far as it could be read.</summary>
internal sealed record HandlingFacts(
    CollectionTube? Tube,
    Spinning? Spinning,
    Parts<StorageTemperature> Temperatures,
    Thawing? Thawing,
    SpecimenSource? Subjects,
    string? Funding,
    string? Interests
)
{
    public static HandlingFacts Read(TomlTable root) =>
        new(
            Tube: Of(root, FactsKeys.CollectionTube, CollectionTubeKeys.Read),
            Spinning: Of(root, FactsKeys.Spinning, SpinningKeys.Read),
            Temperatures: Parts<StorageTemperature>.Read(
                root,
                FactsKeys.Temperatures,
                TemperatureKeys.Read
            ),
            Thawing: Of(root, FactsKeys.Thawing, ThawingKeys.Read),
            Subjects: Of(root, FactsKeys.Subjects, SubjectKeys.Read),
            Funding: root.Read(FactsKeys.Funding),
            Interests: root.Read(FactsKeys.Interests)
        );

    private static T? Of<T>(TomlTable root, TableKey key, Func<TomlTable, T> read)
        where T : class => root.OptionalTable(key) is { } table ? read(table) : null;
}
