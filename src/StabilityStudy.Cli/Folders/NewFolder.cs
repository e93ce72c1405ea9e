namespace StabilityStudy.Cli.Folders;

/// <summary>A folder that is made with all its files, or not at all.</summary>
internal static class NewFolder
{
    /// <summary>Refuses what is there already, unless it is a folder without anything in it.</summary>
    /// <exception cref="UsageException">It is a file, a link or a folder with something in it.</exception>
    public static void RequireFree(string path)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new UsageException("Name the folder to be made.");
        }

        StudyLinks.RequireNone(folder: null, Path.TrimEndingDirectorySeparator(path));
        if (File.Exists(path))
        {
            throw new UsageException($"{path} is a file. Name a new folder; nothing was written.");
        }

        if (Directory.Exists(path) && Count(path) is > 0 and var count)
        {
            throw new UsageException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{path} is not empty ({count} {(count == 1 ? "entry" : "entries")}). Name a new folder; nothing was written."
                )
            );
        }
    }

    /// <summary>
    /// Writes the files beside the folder and gives them its name when all are there. Into an empty folder, which may be
    /// the one somebody works in and so is kept, they are moved one after the other; what was moved is taken back when one cannot be.
    /// </summary>
    /// <exception cref="UsageException">The folder is not free, or cannot be written.</exception>
    public static void Write(
        string path,
        ImmutableArray<(string Name, ReadOnlyMemory<byte> Bytes)> files
    )
    {
        RequireFree(path);
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        var isThere = Directory.Exists(target);
        var staged = isThere
            ? Path.Combine(target, Path.GetRandomFileName() + ".part")
            : $"{target}.{Path.GetRandomFileName()}.part";
        var moved = new List<string>();
        try
        {
            Directory.CreateDirectory(staged);
            AtomicFile.Write([
                .. files.Select(file => (Path.Combine(staged, file.Name), file.Bytes)),
            ]);
            if (!isThere)
            {
                Directory.Move(staged, target);
                return;
            }

            foreach (var (name, _) in files)
            {
                var to = Path.Combine(target, name);
                Directory.CreateDirectory(Path.GetDirectoryName(to) ?? target);
                File.Move(Path.Combine(staged, name), to);
                moved.Add(to);
            }

            moved.Clear();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be written: {error.Message}", error);
        }
        finally
        {
            moved.ForEach(File.Delete);
            if (Directory.Exists(staged))
            {
                Directory.Delete(staged, recursive: true);
            }
        }
    }

    private static int Count(string path)
    {
        try
        {
            return Directory.EnumerateFileSystemEntries(path).Count();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be read: {error.Message}", error);
        }
    }
}
