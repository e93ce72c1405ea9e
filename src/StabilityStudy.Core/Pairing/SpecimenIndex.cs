using System.Runtime.InteropServices;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>The specimens of each patient group and storage, put together once, so that the time taken grows with the rows and not with their square.</summary>
internal sealed class SpecimenIndex
{
    private readonly StudyRows _rows;
    private readonly Dictionary<
        (string Group, string Storage),
        ImmutableArray<DrawnSpecimen>
    > _specimens;

    public SpecimenIndex(StudyRows rows)
    {
        _rows = rows;
        var spelling = Spelling(rows.Inputs.Tubes);
        var notDrawn = NotDrawnTubes
            .Of(rows)
            .Where(item => item.Standing == NotDrawnStanding.Counts)
            .ToLookup(item => item.Statement.Specimen, item => item.Statement);
        _specimens = rows
            .Specimens.Where(specimen => !specimen.Tubes.IsEmpty)
            .OrderBy(specimen => specimen.Specimen, StringComparer.Ordinal)
            .ToArray()
            .AsParallel()
            .AsOrdered()
            .Select(specimen => InStorages(specimen, spelling, notDrawn[specimen.Specimen]))
            .AsEnumerable()
            .SelectMany(specimens => specimens)
            .GroupBy(item => (item.Group, item.Drawn.Storage), item => item.Drawn)
            .ToDictionary(same => same.Key, DrawnSpecimen.Marked);
    }

    /// <summary>The draws of a patient group that wait in a storage, ordered by code.</summary>
    public ImmutableArray<Draw> Draws(string analyte, string group, string storage) =>
        [
            .. _specimens
                .GetValueOrDefault((group, storage), [])
                .Select(specimen => new Draw(specimen, _rows.Of(analyte, specimen.Rows))),
        ];

    /// <summary>A person's code may differ in case between tubes; the person is one, so the spelling that comes first stands for all.</summary>
    private static Dictionary<string, TubeRow> Spelling(ImmutableArray<TubeRow> tubes)
    {
        var spelling = new Dictionary<string, TubeRow>(StringComparer.OrdinalIgnoreCase);
        foreach (var tube in tubes)
        {
            if (
                !spelling.TryGetValue(tube.Subject, out var first)
                || tube.SourceRow < first.SourceRow
            )
            {
                spelling[tube.Subject] = tube;
            }
        }

        return spelling;
    }

    /// <summary>A specimen in each group and storage that one of its tubes names.</summary>
    private static ImmutableArray<(string Group, DrawnSpecimen Drawn)> InStorages(
        SpecimenRows specimen,
        Dictionary<string, TubeRow> spelling,
        IEnumerable<NotDrawn> notDrawn
    )
    {
        var tubes = ByCode(specimen.Tubes.Span, spelling);
        var retested = Retested(specimen.Results.Span);
        return
        [
            .. tubes
                .Select(tube => (tube.Group, tube.Storage))
                .Distinct()
                .Select(place =>
                    (
                        place.Group,
                        new DrawnSpecimen(
                            specimen,
                            place.Storage,
                            tubes,
                            retested,
                            [
                                .. notDrawn.Where(item =>
                                    (item.Storage ?? place.Storage) == place.Storage
                                ),
                            ]
                        )
                    )
                ),
        ];
    }

    private static ImmutableArray<TubeRow> ByCode(
        ReadOnlySpan<TubeRow> rows,
        Dictionary<string, TubeRow> spelling
    )
    {
        var tubes = rows.ToArray();
        var isInOrder = true;
        for (var i = 0; i < tubes.Length; i++)
        {
            var subject = spelling[tubes[i].Subject].Subject;
            if (subject != tubes[i].Subject)
            {
                tubes[i] = tubes[i] with { Subject = subject };
            }

            isInOrder &= i == 0 || string.CompareOrdinal(tubes[i - 1].Tube, tubes[i].Tube) <= 0;
        }

        return isInOrder
            ? ImmutableCollectionsMarshal.AsImmutableArray(tubes)
            : [.. tubes.OrderBy(tube => tube.Tube, StringComparer.Ordinal)];
    }

    private static ImmutableArray<string> Retested(ReadOnlySpan<ResultRow> results)
    {
        ImmutableArray<string> retested = [];
        for (var i = 1; i < results.Length; i++)
        {
            var (row, before) = (results[i], results[i - 1]);
            if (
                (row.Occasion != before.Occasion || row.Tube != before.Tube)
                && OccasionOf(row.Tube, results) != row.Occasion
                && !retested.Contains(row.Tube)
            )
            {
                retested = retested.Add(row.Tube);
            }
        }

        return retested;
    }

    /// <summary>When a tube was tested by the first row that names it.</summary>
    private static TestOccasion OccasionOf(string tube, ReadOnlySpan<ResultRow> results)
    {
        var first = 0;
        while (results[first].Tube != tube)
        {
            first++;
        }

        return results[first].Occasion;
    }
}
