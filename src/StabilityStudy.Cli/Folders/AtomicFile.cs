namespace StabilityStudy.Cli.Folders;

/// <summary>Writes files so that at any moment either the old or the new one is there, never a part.</summary>
internal static class AtomicFile
{
    /// <summary>Writes every file under a temporary name beside its target and flushes it to disk; only when all are there are they renamed.</summary>
    /// <exception cref="UsageException">A file cannot be written; none was replaced unless the renaming itself failed.</exception>
    public static void Write(params (string Path, ReadOnlyMemory<byte> Bytes)[] files) =>
        Write(null, files);

    /// <summary>The same with files that nobody else can read at any moment, where the system knows such files.</summary>
    /// <exception cref="UsageException">A file cannot be written.</exception>
    public static void WriteOwn(params (string Path, ReadOnlyMemory<byte> Bytes)[] files) =>
        Write(
            OperatingSystem.IsWindows() ? null : UnixFileMode.UserRead | UnixFileMode.UserWrite,
            files
        );

    private static void Write(UnixFileMode? mode, (string Path, ReadOnlyMemory<byte> Bytes)[] files)
    {
        var staged = new List<(string Temporary, string Target)>();
        var path = "";
        try
        {
            foreach (var file in files)
            {
                path = file.Path;
                StudyLinks.RequireNone(folder: null, path);
                var target = Path.GetFullPath(path);
                var temporary = $"{target}.{Path.GetRandomFileName()}.part";
                Directory.CreateDirectory(Path.GetDirectoryName(target) ?? ".");
                staged.Add((temporary, target));
                Stage(temporary, file.Bytes.Span, mode ?? ModeOf(target));
            }

            foreach (var (temporary, target) in staged)
            {
                path = target;
                File.Move(temporary, target, overwrite: true);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
        finally
        {
            // Only what exists: deleting a file in a folder that could not be made is an error of its own.
            foreach (var (temporary, _) in staged.Where(file => File.Exists(file.Temporary)))
            {
                File.Delete(temporary);
            }
        }
    }

    /// <summary>Who may read and write the file that is there; null where there is none, or the system knows no such rights.</summary>
    private static UnixFileMode? ModeOf(string target) =>
        !OperatingSystem.IsWindows() && File.Exists(target) ? File.GetUnixFileMode(target) : null;

    private static void Stage(string temporary, ReadOnlySpan<byte> bytes, UnixFileMode? mode)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            Share = FileShare.None,
        };
        if (mode is not null && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = mode;
        }

        using var stream = new FileStream(temporary, options);
        if (mode is { } wanted && !OperatingSystem.IsWindows())
        {
            // The mask of the process takes rights away from a new file.
            File.SetUnixFileMode(stream.SafeFileHandle, wanted);
        }

        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }
}
