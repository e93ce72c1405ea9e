using StabilityStudy.Core.Queries;

namespace StabilityStudy.Core.Pairing;

/// <summary>Places in the canonical data files; the line is that of the facility's own file.</summary>
internal static class DataFiles
{
    /// <summary>A place in specimens.csv.</summary>
    public static QuerySource SpecimensAt(int line, string column) =>
        new("specimens.csv", line, column);

    /// <summary>A place in results.csv.</summary>
    public static QuerySource ResultsAt(int line, string column) =>
        new("results.csv", line, column);
}
