namespace StabilityStudy.Cli.Folders;

/// <summary>Symbolic links: one in a study folder may lead anywhere, and what is read or written then is not the study.</summary>
internal static class StudyLinks
{
    /// <summary>Refuses to read through a link that leads out of the study folder.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="path">A file in it or in a folder of it.</param>
    /// <exception cref="UsageException">A part of the path below the folder is such a link.</exception>
    public static void RequireInside(string folder, string path)
    {
        foreach (var part in PartsBelow(folder, path))
        {
            if (TargetOf(part) is { } target && !IsBelow(Real(folder), Real(target)))
            {
                throw new UsageException(
                    $"{part} is a link to {target}, which lies outside of the study folder. Put the file or folder itself in its place."
                );
            }
        }
    }

    /// <summary>Refuses to write through a link: to a link itself, or into a folder of a study that is one.</summary>
    /// <param name="folder">The study folder; null where there is none.</param>
    /// <param name="path">What is to be written.</param>
    /// <exception cref="UsageException">There is a link.</exception>
    public static void RequireNone(string? folder, string path)
    {
        ImmutableArray<string> parts = folder is null
            ? [path]
            : [.. PartsBelow(folder, path), path];
        foreach (var part in parts)
        {
            if (TargetOf(part) is { } target)
            {
                throw new UsageException(
                    $"{part} is a link to {target}, and nothing is written through a link. Give the file or folder itself, or remove the link."
                );
            }
        }
    }

    private static IEnumerable<string> PartsBelow(string folder, string path)
    {
        var root = Path.GetFullPath(folder);
        var full = Path.GetFullPath(path);
        if (!IsBelow(root, full))
        {
            yield break;
        }

        var part = Path.TrimEndingDirectorySeparator(root);
        foreach (
            var name in Path.GetRelativePath(root, full)
                .Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar])
        )
        {
            part = Path.Combine(part, name);
            yield return part;
        }
    }

    private static bool IsBelow(string folder, string path) =>
        path.StartsWith(
            Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar,
            StringComparison.Ordinal
        );

    /// <summary>Where a link leads in the end; null for anything else.</summary>
    private static string? TargetOf(string path)
    {
        try
        {
            var entry = new FileInfo(path);
            return entry.LinkTarget is null
                ? null
                : entry.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? entry.LinkTarget;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be read: {error.Message}", error);
        }
    }

    /// <summary>The path with every link in it followed.</summary>
    private static string Real(string path)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Path.GetDirectoryName(full) is not { } parent)
        {
            return full;
        }

        return TargetOf(full) is { } target
            ? Real(target)
            : Path.Combine(Real(parent), Path.GetFileName(full));
    }
}
