using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads a folder of signed reports: every PDF file in it and the folders inside it, each verified now. Nothing is remembered between two calls.</summary>
internal static class RegisterFolder
{
    /// <summary>A link that leads back up must not be followed without end.</summary>
    private const int DeepestFolder = 8;

    /// <summary>The register.</summary>
    /// <exception cref="UsageException">There is no such folder, or no PDF file in it.</exception>
    public static WindowRegister Read(string folder, VerificationOptions options, Terminal terminal)
    {
        if (!Directory.Exists(folder))
        {
            throw new UsageException($"There is no folder {folder}.");
        }

        var files = FilesIn(folder, "*.pdf");
        if (files.IsEmpty)
        {
            throw new UsageException(
                $"There is no PDF file in {folder}. Put the signed reports of your studies into it."
            );
        }

        return WindowRegister.Of([
            .. files.Select(file => ReadFile(folder, file, options, terminal)),
            .. FilesIn(folder, LockFile.Name)
                .Select(file => ReadStudy(folder, Path.GetDirectoryName(file) ?? folder))
                .OfType<RegisterEntry>(),
        ]);
    }

    /// <summary>Folders inside it and hidden files belong to it: a report that nobody sees could hold a shorter window.</summary>
    private static ImmutableArray<string> FilesIn(string folder, string pattern)
    {
        try
        {
            return
            [
                .. Directory
                    .EnumerateFiles(
                        folder,
                        pattern,
                        new EnumerationOptions
                        {
                            RecurseSubdirectories = true,
                            MatchCasing = MatchCasing.CaseInsensitive,
                            AttributesToSkip = FileAttributes.None,
                            IgnoreInaccessible = false,
                            MaxRecursionDepth = DeepestFolder,
                        }
                    )
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{folder} cannot be read: {error.Message}", error);
        }
    }

    /// <summary>A study folder inside the register: what was locked and never reported is seen, and where it cannot be read the listing goes on.</summary>
    private static RegisterEntry? ReadStudy(string folder, string study)
    {
        try
        {
            return RegisterReading.ReadFolder(
                Path.GetRelativePath(folder, study),
                StudyFolder.ReadLocks(study)
            );
        }
        catch (UsageException)
        {
            return new RegisterEntry
            {
                Study = new RegisteredStudy(
                    Path.GetRelativePath(folder, study),
                    Path.GetFileName(study),
                    StudyStage.Locked
                )
                {
                    Why = "Its files cannot be read.",
                },
            };
        }
    }

    /// <summary>A file that cannot be opened stands in the register as one that is not trusted: it may hold anything.</summary>
    private static RegisterEntry ReadFile(
        string folder,
        string file,
        VerificationOptions options,
        Terminal terminal
    )
    {
        var name = Path.GetRelativePath(folder, file);
        terminal.Progress("Verifying " + name);
        try
        {
            return RegisterReading.Read(name, ReportFile.Read(file), options);
        }
        catch (UsageException error)
        {
            return new RegisterEntry
            {
                Report = new RegisteredReport(name, ReportStanding.NotTrusted)
                {
                    Why = error.Message,
                },
            };
        }
    }
}
