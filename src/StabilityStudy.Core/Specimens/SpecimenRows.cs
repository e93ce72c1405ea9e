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
        IsByLine(Tubes.Span)
            ? [.. Tubes.Span]
            : [.. Tubes.ToArray().OrderBy(tube => tube.SourceRow)];

    private static bool IsByLine(ReadOnlySpan<TubeRow> tubes)
    {
        for (var i = 1; i < tubes.Length; i++)
        {
            if (tubes[i].SourceRow < tubes[i - 1].SourceRow)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The tube with a code; null when specimens.csv has none.</summary>
    public TubeRow? Tube(string code) => TubeWith(code, Tubes.Span);

    /// <summary>The tube with a code among those of a specimen; null when there is none.</summary>
    public static TubeRow? TubeWith(string code, ReadOnlySpan<TubeRow> tubes)
    {
        foreach (var tube in tubes)
        {
            if (tube.Tube == code)
            {
                return tube;
            }
        }

        return null;
    }
}
