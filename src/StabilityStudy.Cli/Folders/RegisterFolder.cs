using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads a folder of signed reports: every PDF file in it and the folders inside it, each verified now, or today by this build and this trust.</summary>
internal static class RegisterFolder
{
    /// <summary>A link that leads back up must not be followed without end.</summary>
    private const int DeepestFolder = 8;

    /// <summary>The register.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="terminal">Where progress is told.</param>
    /// <param name="cache">What was found today already; null to verify every file.</param>
    /// <param name="mayStay">Whether an entry of the cache may be used, or its file is verified anew.</param>
    /// <param name="depth">How deep folders inside it are read.</param>
    /// <exception cref="UsageException">There is no such folder.</exception>
    public static WindowRegister Read(
        string folder,
        VerificationOptions options,
        Terminal terminal,
        VerificationCache? cache,
        Func<RegisterEntry, bool> mayStay,
        int depth = DeepestFolder
    )
    {
        return WindowRegister.Of([
            .. Pdfs(folder, depth).Select(file => ReadFile(folder, file)),
            .. Locks(folder, depth)
                .Select(study => ReadStudy(folder, study))
                .OfType<RegisterEntry>(),
        ]);

        // A file that cannot be opened stands in the register as one that is not trusted: it may hold anything.
        RegisterEntry ReadFile(string folder, string file)
        {
            var name = Path.GetRelativePath(folder, file);
            try
            {
                var bytes = ReportFile.Read(file);
                var sha256 = InputDigest.Sha256(bytes.Span);
                if (cache?.TryRead(sha256, name, out var known) == true && mayStay(known))
                {
                    return known;
                }

                terminal.Progress("Verifying " + name);
                var found = RegisterReading.Read(name, bytes, options);
                cache?.Write(sha256, found);
                return found;
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

    /// <summary>All that a register holds, to be copied.</summary>
    /// <exception cref="UsageException">There is no such folder, no PDF file in it, or a file cannot be read.</exception>
    public static RegisterFiles Files(string folder)
    {
        var studies = Locks(folder);
        var pdfs = Pdfs(folder);
        if (pdfs.IsEmpty)
        {
            throw new UsageException(
                $"There is no PDF file in {folder}. Put the signed reports of your studies into it."
            );
        }

        return new(
            [.. pdfs.Select(file => Source(file, ReportFile.Read(file)))],
            [.. studies.Select(study => (NameIn(folder, study), StudyFolder.ReadLocks(study)))]
        )
        {
            Locks =
            [
                .. studies
                    .SelectMany(StudyFolder.LockFiles)
                    .Select(file =>
                        Source(file, InputFile.Read(file, StudyLimits.BytesOf(file), "study file"))
                    ),
            ],
        };

        InspectionFile Source(string file, ReadOnlyMemory<byte> bytes) =>
            new(NameIn(folder, file), bytes);
    }

    private static string NameIn(string folder, string path) =>
        Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/');

    private static ImmutableArray<string> Pdfs(string folder, int depth = DeepestFolder) =>
        Directory.Exists(folder)
            ? FilesIn(folder, "*.pdf", depth)
            : throw new UsageException($"There is no folder {folder}.");

    /// <summary>The study folders inside it.</summary>
    private static ImmutableArray<string> Locks(string folder, int depth = DeepestFolder) =>
        [
            .. FilesIn(folder, LockFile.Name, depth)
                .Select(file => Path.GetDirectoryName(file) ?? folder),
        ];

    /// <summary>Folders inside it and hidden files belong to it: a report that nobody sees could hold a shorter window.</summary>
    private static ImmutableArray<string> FilesIn(string folder, string pattern, int depth)
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
                            MaxRecursionDepth = depth,
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
}
