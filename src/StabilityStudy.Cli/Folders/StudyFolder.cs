using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Cli.Folders;

/// <summary>A study folder on disk.</summary>
internal static class StudyFolder
{
    /// <summary>Larger files are not a study's; reading them would only exhaust the memory.</summary>
    private const long LargestFile = 1L << 30;

    /// <summary>Reads the files that a study may consist of; files of other kinds are left alone.</summary>
    /// <exception cref="UsageException">The folder does not exist or a file cannot be read.</exception>
    public static StudyBytes Read(string path)
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
            return StudyBytes.Of(
                Directory
                    .EnumerateFiles(path)
                    .Where(StudyBytes.Belongs)
                    .Select(file => KeyValuePair.Create(Path.GetFileName(file), ReadFile(file)))
                    .Concat(LockedCopies(path))
            );
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"The study folder cannot be read: {error.Message}", error);
        }
    }

    /// <summary>The copies of locked protocols, under the names that they have in a report.</summary>
    private static IEnumerable<KeyValuePair<string, ReadOnlyMemory<byte>>> LockedCopies(string path)
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
                yield return KeyValuePair.Create(name, ReadFile(copy));
            }
        }
    }

    private static ReadOnlyMemory<byte> ReadFile(string file) =>
        new FileInfo(file).Length > LargestFile
            ? throw new UsageException($"{file} is larger than 1 GiB; that is not a study file.")
            : File.ReadAllBytes(file);
}
