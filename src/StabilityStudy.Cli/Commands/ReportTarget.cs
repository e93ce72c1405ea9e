using StabilityStudy.Cli.Folders;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Cli.Commands;

/// <summary>Where a report may be written.</summary>
internal static class ReportTarget
{
    private const string AnalysisName = "analysis.json";
    private const string TextExtension = ".txt";

    /// <summary>The path of analysis.json that goes with a report: named after the report where somebody gave its name, since the folder may hold those of other studies.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="output">Where the report was asked for; null for its usual place.</param>
    /// <param name="target">Where it goes.</param>
    /// <exception cref="UsageException">The report may not be written there: it would replace analysis.json, a file that a study consists of, or a signed report.</exception>
    public static string AnalysisBeside(string folder, string? output, string target)
    {
        if (string.IsNullOrWhiteSpace(target))
        {
            throw new UsageException("--output needs the path of a file, such as report.pdf.");
        }

        if (Directory.Exists(target))
        {
            throw new UsageException(
                $"{target} is a folder. Give the path of a file, such as {Path.Combine(target, "report.pdf")}."
            );
        }

        if (
            IsOfData(folder, target)
            || string.Equals(
                Path.GetExtension(target),
                Path.GetExtension(AnalysisName),
                StringComparison.OrdinalIgnoreCase
            )
        )
        {
            throw new UsageException(
                $"{target} has the name of a data file, which the report could replace. Name it like report.pdf."
            );
        }

        if (SignedFile.IsAt(target))
        {
            throw new UsageException(
                $"{target} holds a signature, which a new report would destroy. Move it, or write elsewhere with --output."
            );
        }

        if (
            ReportFile.StudyFolder(target) is { } study
            && Path.GetFullPath(study)
                != Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))
        )
        {
            throw new UsageException(
                $"{target} would lie in the folder of another study, {study}. Write the report elsewhere with --output."
            );
        }

        return Path.Combine(
            Path.GetDirectoryName(Path.GetFullPath(target)) ?? ".",
            output is null
                ? AnalysisName
                : $"{Path.GetFileNameWithoutExtension(target)}.{AnalysisName}"
        );
    }

    // A text file is one of data only where study.toml names it.
    private static bool IsOfData(string folder, string target) =>
        StudyBytes.Belongs(target)
        && (
            !string.Equals(
                Path.GetExtension(target),
                TextExtension,
                StringComparison.OrdinalIgnoreCase
            )
            || (
                string.Equals(
                    Path.GetDirectoryName(Path.GetFullPath(target)),
                    Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)),
                    StringComparison.Ordinal
                )
                && StudyIntake
                    .DataNamesIn(StudyFolder.Read(folder))
                    .Contains(Path.GetFileName(target))
            )
        );
}
