using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Files.Json.Entries;

/// <summary>A specimen of a pair with its tubes that have a result.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Subject">Study code of the person.</param>
/// <param name="CollectedAt">Time of collection.</param>
internal sealed record SpecimenEntry(string Specimen, string Subject, DateTimeOffset CollectedAt)
{
    /// <summary>The tubes, by code.</summary>
    public ImmutableArray<TubeEntry> Tubes { get; private init; } = [];

    /// <summary>The specimens of a study, by code.</summary>
    /// <exception cref="InvalidOperationException">A specimen or tube is not the same everywhere.</exception>
    public static ImmutableArray<SpecimenEntry> Of(StudyAnalysis analysis)
    {
        var specimens = new Dictionary<string, Found>(StringComparer.Ordinal);
        foreach (
            var pair in analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .SelectMany(cell => cell.Pairs)
        )
        {
            var entry = new SpecimenEntry(pair.Specimen, pair.Subject, pair.CollectedAt);
            if (!specimens.TryGetValue(pair.Specimen, out var found))
            {
                found = new Found(entry, new(StringComparer.Ordinal));
                specimens.Add(pair.Specimen, found);
            }

            OneStatement.Require(found.Specimen, entry, pair.Specimen);
            found.Add(pair.Baseline);
            found.Add(pair.Delayed);
        }

        return
        [
            .. specimens
                .Values.Select(found =>
                    found.Specimen with
                    {
                        Tubes =
                        [
                            .. found
                                .Tubes.Values.Select(tube => tube.Entry)
                                .OrderBy(tube => tube.Tube, StringComparer.Ordinal),
                        ],
                    }
                )
                .OrderBy(entry => entry.Specimen, StringComparer.Ordinal),
        ];
    }

    private readonly record struct Found(
        SpecimenEntry Specimen,
        Dictionary<string, (TubeEntry Entry, TubeRow? Row)> Tubes
    )
    {
        public void Add(Measurement? result)
        {
            if (result is null)
            {
                return;
            }

            var isKnown = Tubes.TryGetValue(result.Tube, out var known);
            if (isKnown && ReferenceEquals(known.Row, result.Container))
            {
                return;
            }

            var entry = TubeEntry.Of(result, Specimen.CollectedAt);
            if (isKnown)
            {
                OneStatement.Require(known.Entry, entry, Specimen.Specimen);
            }
            else
            {
                Tubes.Add(result.Tube, (entry, result.Container));
            }
        }
    }
}

/// <summary>A tube with the times that the waiting of its results follows from.</summary>
/// <param name="Tube">Code of the container, unique within the specimen.</param>
/// <param name="CollectedAt">Time of collection; null where it is that of the specimen.</param>
/// <param name="SpunAt">Time of spinning; null when not known.</param>
/// <param name="FrozenAt">Time of freezing; null when not frozen.</param>
/// <param name="ThawedAt">Time of thawing; null when not frozen.</param>
internal sealed record TubeEntry(
    string Tube,
    DateTimeOffset? CollectedAt,
    DateTimeOffset? SpunAt,
    DateTimeOffset? FrozenAt,
    DateTimeOffset? ThawedAt
)
{
    public static TubeEntry Of(Measurement result, DateTimeOffset collectedAt) =>
        result.Container is { } tube
            ? new(
                result.Tube,
                tube.CollectedAt.EqualsExact(collectedAt) ? null : tube.CollectedAt,
                tube.SpunAt,
                tube.FrozenAt,
                tube.ThawedAt
            )
            : new(result.Tube, null, null, null, null);
}
