using StabilityStudy.Cli.Folders;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Cli.Commands;

/// <summary>Where a report may be written.</summary>
internal static class ReportTarget
{
    private const string AnalysisName = "analysis.json";

    /// <summary>The path of analysis.json that goes with a report.</summary>
    /// <exception cref="UsageException">The report may not be written there: it would replace analysis.json, a file that a study consists of, or a signed report.</exception>
    public static string AnalysisBeside(string target)
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
            StudyBytes.Belongs(target)
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

        return Path.Combine(Path.GetDirectoryName(Path.GetFullPath(target)) ?? ".", AnalysisName);
    }
}
