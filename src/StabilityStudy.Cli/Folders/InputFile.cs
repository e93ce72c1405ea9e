using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads a file that somebody named or that lies in a study folder, within a bound.</summary>
internal static class InputFile
{
    /// <summary>The content. A file without length is not opened: a pipe or device has none and would be waited for without end.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Most bytes.</param>
    /// <param name="what">What a larger file cannot be: "report".</param>
    /// <exception cref="UsageException">It cannot be read, or is too large.</exception>
    public static ReadOnlyMemory<byte> Read(string path, int most, string what)
    {
        try
        {
            // A link has a length of its own.
            var length = (
                (FileInfo?)File.ResolveLinkTarget(path, returnFinalTarget: true) ?? new(path)
            ).Length;
            if (length == 0)
            {
                return default;
            }

            if (length > most)
            {
                throw TooLarge(path, most, what);
            }

            using var stream = File.OpenRead(path);
            var bytes = new byte[length];
            stream.ReadExactly(bytes);
            return stream.ReadByte() < 0 ? bytes : throw TooLarge(path, most, what);
        }
        catch (Exception error)
            when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new UsageException($"{path} cannot be read: {error.Message}", error);
        }
    }

    /// <summary>The content of a file that must hold something.</summary>
    /// <exception cref="UsageException">It cannot be read, is too large, or holds nothing.</exception>
    public static ReadOnlyMemory<byte> ReadFilled(string path, int most, string what)
    {
        if (Directory.Exists(path))
        {
            throw new UsageException($"{path} is a folder. Give the file of the {what}.");
        }

        var bytes = Read(path, most, what);
        return bytes.IsEmpty
            ? throw new UsageException(
                $"{path} is empty, or is no file but a pipe, socket or device. Give the file of the {what}."
            )
            : bytes;
    }

    private static UsageException TooLarge(string path, int most, string what) =>
        new($"{path} is larger than {StudyLimits.InWords(most)}; that is no {what}.");
}
