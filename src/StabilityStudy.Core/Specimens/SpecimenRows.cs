namespace StabilityStudy.Core.Specimens;

/// <summary>The rows of one specimen, in the order of the files.</summary>
/// <param name="Number">Its place among the specimens of the study.</param>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Tubes">Its tubes; empty where only results name it.</param>
/// <param name="Results">Its results.</param>
internal sealed record SpecimenRows(
    int Number,
    string Specimen,
    ReadOnlyMemory<TubeRow> Tubes,
    ReadOnlyMemory<ResultRow> Results
)
{
    /// <summary>Its tubes in the order of their lines, which two files need not keep.</summary>
    public ImmutableArray<TubeRow> TubesByLine =>
        [.. Tubes.ToArray().OrderBy(tube => tube.SourceRow)];

    /// <summary>The tube with a code; null when specimens.csv has none.</summary>
    public TubeRow? Tube(string code)
    {
        foreach (var tube in Tubes.Span)
        {
            if (tube.Tube == code)
            {
                return tube;
            }
        }

        return null;
    }
}
