using StabilityStudy.Core.Inspection;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Inspection;

/// <summary>What verification found of a signed file, in words.</summary>
/// <param name="Name">Name in the folder.</param>
/// <param name="What">Report, protocol document or notice, and of what.</param>
/// <param name="Parts">Each question with its outcome in a word, and what was found.</param>
public sealed record InspectedFile(string Name, string What, ImmutableArray<InspectedPart> Parts);

/// <summary>What verification found about one question.</summary>
/// <param name="Question">The question.</param>
/// <param name="Outcome">Holds, not fully checked, or fails.</param>
/// <param name="Holds">Whether nothing is left to say.</param>
/// <param name="Found">What was found, a sentence each.</param>
public sealed record InspectedPart(
    string Question,
    string Outcome,
    bool Holds,
    ImmutableArray<string> Found
);

/// <summary>A report as this version computes it again, with the pages of its file.</summary>
/// <param name="Report">The report in the register.</param>
/// <param name="Analysis">What its data say.</param>
/// <param name="Pages">Pages of its sections.</param>
public sealed record InspectedReport(
    RegisteredReport Report,
    StudyAnalysis Analysis,
    SectionPages Pages
);

/// <summary>Bench documents that are in force, or why there are none.</summary>
/// <param name="Subject">Analyte and storage.</param>
/// <param name="Files">Their names in the folder; empty where there are none.</param>
/// <param name="Obstacle">Why there are none; null where there are.</param>
public sealed record InspectedBench(string Subject, ImmutableArray<string> Files, string? Obstacle);

/// <summary>Everything that the index of an inspection folder shows.</summary>
/// <param name="Terms">How the folder was made.</param>
/// <param name="Register">The register.</param>
/// <param name="ListSha256">SHA-256 of the list of files.</param>
/// <param name="List">The list of files: name and SHA-256.</param>
public sealed record InspectionContents(
    InspectionTerms Terms,
    WindowRegister Register,
    string ListSha256,
    ImmutableArray<FileHash> List
)
{
    /// <summary>The signed files.</summary>
    public ImmutableArray<InspectedFile> SignedFiles { get; init; } = [];

    /// <summary>The reports that could be computed again.</summary>
    public ImmutableArray<InspectedReport> Reports { get; init; } = [];

    /// <summary>The documents of the bench.</summary>
    public ImmutableArray<InspectedBench> Bench { get; init; } = [];
}
