namespace StabilityStudy.Files.Tests;

/// <summary>Files of the repository that must agree with the program. They are written anew only when UPDATE_GOLDEN is 1.</summary>
internal static class RepositoryFile
{
    public static string Root { get; } = FindRoot();

    public static void RequireSame(string path, string expected)
    {
        var full = Path.Combine(Root, path);
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1")
        {
            File.WriteAllText(full, expected);
        }

        Assert.Equal(expected, File.ReadAllText(full));
    }

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "StabilityStudy.sln")))
        {
            folder =
                Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("The repository was not found.");
        }

        return folder;
    }
}
