namespace StabilityStudy.Core.Study;

/// <summary>Names of the data files in the study folder.</summary>
/// <param name="Specimens">A row a tube.</param>
/// <param name="Results">A row a result.</param>
public sealed record StudyFileNames(string Specimens, string Results)
{
    /// <summary>The canonical file of earlier looks.</summary>
    public const string Looks = "looks.csv";

    /// <summary>A row a control result.</summary>
    public string Controls { get; init; } = "controls.csv";

    /// <summary>Lines by which each further file of a kind is counted on, so that one number tells file and line.</summary>
    public const int LinesOfFile = 5_000_000;

    /// <summary>Further files of tubes.</summary>
    public ImmutableArray<string> MoreSpecimens { get; init; } = [];

    /// <summary>Further files of results.</summary>
    public ImmutableArray<string> MoreResults { get; init; } = [];

    /// <summary>Further files of control results.</summary>
    public ImmutableArray<string> MoreControls { get; init; } = [];

    /// <summary>The place with the file in which it is, where a line is counted through several files of a kind.</summary>
    public Queries.QuerySource Locate(Queries.QuerySource source)
    {
        if (source.Line is not { } counted || counted <= LinesOfFile)
        {
            return source;
        }

        var more =
            source.File == Specimens ? MoreSpecimens
            : source.File == Results ? MoreResults
            : source.File == Controls ? MoreControls
            : [];
        var file = counted / LinesOfFile - 1;
        return file < more.Length
            ? source with
            {
                File = more[file],
                Line = counted % LinesOfFile,
            }
            : source;
    }

    /// <summary>The line as it is counted through several files of a kind.</summary>
    public static int? CountedLine(
        Queries.QuerySource source,
        string first,
        ImmutableArray<string> more
    ) =>
        source.File == first ? source.Line
        : more.IndexOf(source.File) is >= 0 and var file ? source.Line + (file + 1) * LinesOfFile
        : null;

    /// <summary>The names when study.toml gives none; the canonical files always have them.</summary>
    public static readonly StudyFileNames Usual = new("specimens.csv", "results.csv");
}
