using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>One specimen with its tubes, seen from one storage.</summary>
/// <param name="Rows">Its rows.</param>
/// <param name="Storage">The storage under study.</param>
/// <param name="Tubes">All its tubes, by code; each draw has one.</param>
/// <param name="RetestedTubes">Codes of the tubes that were tested at more than one time, for whatever analyte.</param>
/// <param name="NotDrawn">Tubes of this storage stated at collection not to have been drawn, as far as the statement counts.</param>
internal sealed record DrawnSpecimen(
    SpecimenRows Rows,
    string Storage,
    ImmutableArray<TubeRow> Tubes,
    ImmutableArray<string> RetestedTubes,
    ImmutableArray<NotDrawn> NotDrawn
)
{
    /// <summary>Whether no other specimen of the subject in this group and storage was collected before.</summary>
    public bool IsFirstOfSubject { get; init; }

    /// <summary>The first tube. Subject, group and time of collection are the same for all tubes.</summary>
    public TubeRow First => Tubes[0];

    /// <summary>What its pairs have in common.</summary>
    public CollectedSpecimen Collected { get; } =
        new(Rows.Specimen, Tubes[0].Subject, Tubes[0].CollectedAt);

    /// <summary>The specimens of a group and storage, those marked that are the first of their subject.</summary>
    public static ImmutableArray<DrawnSpecimen> Marked(IEnumerable<DrawnSpecimen> specimens)
    {
        ImmutableArray<DrawnSpecimen> all = [.. specimens];
        var first = new Dictionary<string, DrawnSpecimen>(StringComparer.OrdinalIgnoreCase);
        foreach (var specimen in all)
        {
            if (
                !first.TryAdd(specimen.First.Subject, specimen)
                && IsBefore(specimen, first[specimen.First.Subject])
            )
            {
                first[specimen.First.Subject] = specimen;
            }
        }

        return
        [
            .. all.Select(specimen =>
                specimen with
                {
                    IsFirstOfSubject = ReferenceEquals(first[specimen.First.Subject], specimen),
                }
            ),
        ];
    }

    private static bool IsBefore(DrawnSpecimen specimen, DrawnSpecimen other) =>
        specimen.First.CollectedAt.CompareTo(other.First.CollectedAt) is not 0 and var order
            ? order < 0
            : string.CompareOrdinal(specimen.Rows.Specimen, other.Rows.Specimen) < 0;
}
