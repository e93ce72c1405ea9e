using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Folders;

/// <summary>A report on disk and the study folder to which it belongs.</summary>
internal static class ReportFile
{
    private const int DigestShown = 8;

    /// <summary>Reads a report.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte> Read(string path)
    {
        if (Directory.Exists(path))
        {
            throw new UsageException(
                $"{path} is a folder. Give the report, such as {Path.Combine(path, "out", "report.pdf")}."
            );
        }

        return InputFile.ReadFilled(path, StudyLimits.ReportBytes, "report");
    }

    /// <summary>The study folder of a report: the one above "out" or "signed", or the report's own; null when none of them holds a study. Relative where the path of the report is.</summary>
    public static string? StudyFolder(string path)
    {
        var own = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
        var study = Path.GetFileName(own) is "out" or "signed" ? Path.GetDirectoryName(own) : own;
        return study is not null && File.Exists(Path.Combine(study, StudyBytes.ProtocolName))
            ? AsNamed(path, study)
            : null;
    }

    /// <summary>Where the signed copy of a report goes: signed/CODE-DIGEST8.pdf in the study folder, or beside the report.</summary>
    public static string SignedCopy(string report, string studyCode, string inputDigest)
    {
        var folder = StudyFolder(report) ?? Own(report);
        var code = string.Concat(
            studyCode.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_')
        );
        return Path.Combine(folder, "signed", $"{code}-{inputDigest[..DigestShown]}.pdf");
    }

    private static string Own(string path) =>
        AsNamed(path, Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".");

    private static string AsNamed(string path, string folder) =>
        Path.IsPathRooted(path)
            ? folder
            : Path.GetRelativePath(Environment.CurrentDirectory, folder);
}
