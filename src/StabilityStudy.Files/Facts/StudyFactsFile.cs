using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Facts;

/// <summary>What study.toml says.</summary>
/// <param name="Facts">What happened in this study and with what.</param>
/// <param name="FileNames">Where the data are.</param>
public sealed record StudyFactsFile(StudyFacts Facts, StudyFileNames FileNames);

/// <summary>Names of the data files in the study folder.</summary>
/// <param name="Specimens">A row a tube.</param>
/// <param name="Results">A row a result.</param>
public sealed record StudyFileNames(string Specimens, string Results)
{
    /// <summary>The names when study.toml gives none.</summary>
    public static readonly StudyFileNames Usual = new("specimens.csv", "results.csv");
}
