using StabilityStudy.Files.Inspection;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline.Inspection;

namespace StabilityStudy.Cli.Folders;

/// <summary>A folder for an inspection on disk.</summary>
internal static class InspectionFolder
{
    /// <summary>Whether a path is such a folder, whole or not.</summary>
    public static bool Is(string path) =>
        new[] { InspectionToml.Name, InspectionFiles.List, InspectionFiles.Index }.Any(name =>
            File.Exists(Path.Combine(path, name))
        );

    /// <summary>Every file in it, hidden ones and those of folders included, and its signed files. Links are not followed.</summary>
    /// <exception cref="UsageException">A file cannot be read.</exception>
    public static (ImmutableArray<InspectionFile> Files, RegisterFiles Sources) Read(string path)
    {
        try
        {
            ImmutableArray<string> paths =
            [
                .. Directory
                    .EnumerateFiles(
                        path,
                        "*",
                        new EnumerationOptions
                        {
                            RecurseSubdirectories = true,
                            AttributesToSkip = FileAttributes.None,
                            IgnoreInaccessible = false,
                        }
                    )
                    .Order(StringComparer.Ordinal),
            ];
            foreach (var file in paths)
            {
                StudyLinks.RequireInside(path, file);
            }

            var signed = Path.Combine(path, InspectionFiles.SignedFolder);
            return (
                [
                    .. paths.Select(file => new InspectionFile(
                        Path.GetRelativePath(path, file).Replace(Path.DirectorySeparatorChar, '/'),
                        InputFile.Read(file, StudyLimits.ReportBytes, "file of such a folder")
                    )),
                ],
                paths.Any(file =>
                    file.StartsWith(signed, StringComparison.Ordinal)
                    && Path.GetExtension(file).Equals(".pdf", StringComparison.OrdinalIgnoreCase)
                )
                    ? RegisterFolder.Files(signed)
                    : new RegisterFiles([], [])
            );
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be read: {error.Message}", error);
        }
    }
}
