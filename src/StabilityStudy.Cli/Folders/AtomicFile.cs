namespace StabilityStudy.Cli.Folders;

/// <summary>Writes a file so that at any moment either the old or the new one is there, never a part.</summary>
internal static class AtomicFile
{
    /// <summary>Writes to a temporary name beside the target, flushes to disk and renames.</summary>
    /// <exception cref="UsageException">The file cannot be written.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Path.GetFullPath(path);
        var temporary = $"{full}.{Path.GetRandomFileName()}.part";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(full) ?? ".");
            using (
                var stream = new FileStream(
                    temporary,
                    FileMode.CreateNew,
                    FileAccess.Write,
                    FileShare.None
                )
            )
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, full, overwrite: true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
