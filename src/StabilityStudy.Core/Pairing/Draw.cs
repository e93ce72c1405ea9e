using System.Collections.Immutable;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Pairing;

/// <summary>One specimen with its tubes and its results for one analyte.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Tubes">Its tubes, by code.</param>
/// <param name="Results">Its results for the analyte.</param>
internal sealed record Draw(
    string Specimen,
    ImmutableArray<TubeRow> Tubes,
    ImmutableArray<ResultRow> Results
)
{
    /// <summary>The first tube; each draw has one.</summary>
    public TubeRow First => Tubes[0];

    /// <summary>The draws of a patient group that wait in a storage, ordered by code.</summary>
    public static ImmutableArray<Draw> Of(
        StudyInputs inputs,
        string analyte,
        string group,
        string storage
    )
    {
        var results = inputs
            .Results.Where(row => row.Analyte == analyte)
            .ToLookup(row => row.Specimen);
        return
        [
            .. inputs
                .Tubes.GroupBy(tube => tube.Specimen)
                .Where(tubes => tubes.Any(tube => tube.Group == group && tube.Storage == storage))
                .OrderBy(tubes => tubes.Key, StringComparer.Ordinal)
                .Select(tubes => new Draw(
                    tubes.Key,
                    [.. tubes.OrderBy(tube => tube.Tube, StringComparer.Ordinal)],
                    [.. results[tubes.Key]]
                )),
        ];
    }

    /// <summary>The tube with a code; null when specimens.csv has none.</summary>
    public TubeRow? Tube(string code) => Tubes.FirstOrDefault(tube => tube.Tube == code);
}
