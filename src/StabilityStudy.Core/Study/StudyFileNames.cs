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

    /// <summary>The names when study.toml gives none; the canonical files always have them.</summary>
    public static readonly StudyFileNames Usual = new("specimens.csv", "results.csv");
}
