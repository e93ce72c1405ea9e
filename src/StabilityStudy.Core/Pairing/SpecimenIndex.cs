using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>The rows of a study by specimen, read once, so that the time taken grows with the rows and not with their square.</summary>
internal sealed class SpecimenIndex
{
    private readonly ILookup<
        (string Group, string Storage),
        (string Specimen, ImmutableArray<TubeRow> Tubes)
    > _specimens;
    private readonly ILookup<(string Specimen, string Analyte), ResultRow> _results;
    private readonly Dictionary<string, ImmutableHashSet<string>> _retested = new(
        StringComparer.Ordinal
    );
    private readonly ILookup<string, NotDrawn> _notDrawn;

    public SpecimenIndex(StudyInputs inputs)
    {
        _specimens = OneSpelling(inputs.Tubes)
            .GroupBy(tube => tube.Specimen)
            .OrderBy(tubes => tubes.Key, StringComparer.Ordinal)
            .Select(tubes =>
                (
                    tubes.Key,
                    Tubes: tubes
                        .OrderBy(tube => tube.Tube, StringComparer.Ordinal)
                        .ToImmutableArray()
                )
            )
            .SelectMany(item =>
                item.Tubes.Select(tube => (tube.Group, tube.Storage))
                    .Distinct()
                    .Select(place => (Place: place, Item: item))
            )
            .ToLookup(found => found.Place, found => found.Item);
        _results = inputs.Results.ToLookup(row => (row.Specimen, row.Analyte));
        AddRetested(inputs.Results);
        _notDrawn = NotDrawnTubes
            .Of(inputs)
            .Where(item => item.Standing == NotDrawnStanding.Counts)
            .ToLookup(item => item.Statement.Specimen, item => item.Statement);
    }

    /// <summary>A person's code may differ in case between tubes; the person is one, so the spelling that comes first stands for all.</summary>
    private static IEnumerable<TubeRow> OneSpelling(ImmutableArray<TubeRow> tubes)
    {
        var spelling = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var tube in tubes.OrderBy(tube => tube.SourceRow))
        {
            spelling.TryAdd(tube.Subject, tube.Subject);
        }

        return tubes.Select(tube => tube with { Subject = spelling[tube.Subject] });
    }

    private void AddRetested(ImmutableArray<ResultRow> results)
    {
        var first = new Dictionary<(string Specimen, string Tube), TestOccasion>();
        foreach (var row in results)
        {
            if (
                !first.TryAdd((row.Specimen, row.Tube), row.Occasion)
                && first[(row.Specimen, row.Tube)] != row.Occasion
            )
            {
                _retested[row.Specimen] = Retested(row.Specimen).Add(row.Tube);
            }
        }
    }

    private ImmutableHashSet<string> Retested(string specimen) =>
        _retested.GetValueOrDefault(specimen, ImmutableHashSet<string>.Empty);

    /// <summary>The draws of a patient group that wait in a storage, ordered by code.</summary>
    public ImmutableArray<Draw> Draws(string analyte, string group, string storage) =>
        [
            .. _specimens[(group, storage)]
                .Select(item => new Draw(
                    item.Specimen,
                    storage,
                    item.Tubes,
                    [.. _results[(item.Specimen, analyte)]],
                    Retested(item.Specimen)
                )
                {
                    NotDrawn =
                    [
                        .. _notDrawn[item.Specimen]
                            .Where(notDrawn => (notDrawn.Storage ?? storage) == storage),
                    ],
                }),
        ];
}
