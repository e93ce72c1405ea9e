using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>Places in the canonical data files; the line is that of the facility's own file.</summary>
internal static class DataFiles
{
    /// <summary>The queries with the names that the facility gave its files.</summary>
    public static IEnumerable<DataQuery> Named(
        IEnumerable<DataQuery> queries,
        StudyFileNames names
    ) =>
        queries.Select(query =>
            query with
            {
                Source = names.Locate(
                    query.Source with
                    {
                        File = NameOf(query.Source.File, names),
                    }
                ),
            }
        );

    /// <summary>A place in specimens.csv.</summary>
    public static QuerySource SpecimensAt(int? line, string? column) =>
        new(StudyFileNames.Usual.Specimens, line, column);

    /// <summary>A place in results.csv.</summary>
    public static QuerySource ResultsAt(int? line, string? column) =>
        new(StudyFileNames.Usual.Results, line, column);

    /// <summary>A place in controls.csv.</summary>
    public static QuerySource ControlsAt(int? line, string? column) =>
        new(StudyFileNames.Usual.Controls, line, column);

    private static string NameOf(string canonical, StudyFileNames names) =>
        canonical == StudyFileNames.Usual.Specimens ? names.Specimens
        : canonical == StudyFileNames.Usual.Results ? names.Results
        : canonical == StudyFileNames.Usual.Controls ? names.Controls
        : canonical;
}
