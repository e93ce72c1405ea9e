using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Folders;

/// <summary>A study folder on disk.</summary>
internal static class StudyFolder
{
    /// <summary>Reads the files that a study may consist of; files of other kinds are left alone.</summary>
    /// <exception cref="UsageException">The folder does not exist or a file cannot be read.</exception>
    public static StudyBytes Read(string path) => Read(path, _ => true);

    /// <summary>The same for the protocol, its locks and their copies alone.</summary>
    /// <exception cref="UsageException">A file cannot be read.</exception>
    public static StudyBytes ReadLocks(string path) =>
        Read(path, name => name is StudyBytes.ProtocolName or LockFile.Name);

    /// <summary>Where these lie.</summary>
    public static IEnumerable<string> LockFiles(string path) =>
        new[] { StudyBytes.ProtocolName, LockFile.Name }
            .Select(name => Path.Combine(path, name))
            .Where(File.Exists)
            .Concat(
                LockedCopies(path)
                    .Select(copy => copy.File)
                    .Where(file => Path.GetExtension(file) == ".toml")
            );

    private static StudyBytes Read(string path, Func<string, bool> isWanted)
    {
        if (!Directory.Exists(path))
        {
            throw new UsageException(
                File.Exists(path)
                    ? $"{path} is a file. Give the study folder that holds it."
                    : $"There is no folder {path}. Give the path of a study folder."
            );
        }

        try
        {
            var left = (long)StudyLimits.TableBytes;
            var files = new Dictionary<string, ReadOnlyMemory<byte>>();
            foreach (
                var (file, name) in Directory
                    .EnumerateFiles(path)
                    .Where(file => StudyBytes.Belongs(file) && isWanted(Path.GetFileName(file)))
                    .Select(file => (file, Path.GetFileName(file)))
                    .Concat(LockedCopies(path))
            )
            {
                files.Add(name, ReadFile(path, file, ref left));
            }

            return StudyBytes.Of(files);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"The study folder cannot be read: {error.Message}", error);
        }
    }

    /// <summary>The copies of locked protocols and their signed documents, under the names that they have in a report.</summary>
    private static IEnumerable<(string File, string Name)> LockedCopies(string path)
    {
        for (var number = 1; ; number++)
        {
            var copy = Path.Combine(path, LockFile.CopyName(number));
            var name = LockedProtocols.StoredName(number);
            if (!File.Exists(copy))
            {
                yield break;
            }

            if (!File.Exists(Path.Combine(path, name)))
            {
                yield return (copy, name);
            }

            var document = Path.Combine(path, LockFile.DocumentName(number));
            if (File.Exists(document))
            {
                yield return (document, LockedProtocols.StoredDocumentName(number));
            }
        }
    }

    private static ReadOnlyMemory<byte> ReadFile(string folder, string file, ref long left)
    {
        StudyLinks.RequireInside(folder, file);
        var bytes = InputFile.Read(file, StudyLimits.BytesOf(file), "study file");
        left -= bytes.Length;
        if (left < 0)
        {
            throw new UsageException(
                $"The files of the study folder are together larger than {StudyLimits.InWords(StudyLimits.TableBytes)}. Move what does not belong to the study elsewhere."
            );
        }

        return
            Path.GetFileName(file) == StudyRecord.Name
            && bytes.Span.Count((byte)'\n') > StudyLimits.RecordLines
            ? throw new UsageException(
                FormattableString.Invariant(
                    $"{file} has more than {StudyLimits.RecordLines} lines; that is no record of a study. Put the record back from a copy."
                )
            )
            : bytes;
    }
}
