using StabilityStudy.Core.Study;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>What study.toml says of specimens and how they were handled, as far as it could be read.</summary>
internal sealed record HandlingFacts(
    Part<CollectionTube>? Tube,
    Part<Spinning>? Spinning,
    Parts<StorageTemperature> Temperatures,
    Part<Thawing>? Thawing,
    Part<SpecimenSource>? Subjects,
    string? Funding,
    string? Interests
)
{
    public static HandlingFacts Read(TomlTable root) =>
        new(
            Tube: Part<CollectionTube>.Optional(
                root,
                FactsKeys.CollectionTube,
                CollectionTubeKeys.Read
            ),
            Spinning: Part<Spinning>.Optional(root, FactsKeys.Spinning, SpinningKeys.Read),
            Temperatures: Parts<StorageTemperature>.Read(
                root,
                FactsKeys.Temperatures,
                TemperatureKeys.Read
            ),
            Thawing: Part<Thawing>.Optional(root, FactsKeys.Thawing, ThawingKeys.Read),
            Subjects: Part<SpecimenSource>.Optional(root, FactsKeys.Subjects, SubjectKeys.Read),
            Funding: root.Read(FactsKeys.Funding),
            Interests: root.Read(FactsKeys.Interests)
        );
}
