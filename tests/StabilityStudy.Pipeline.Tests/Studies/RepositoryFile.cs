namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>Files of the repository that must agree with the program. They are written anew only when UPDATE_GOLDEN is 1.</summary>
internal static class RepositoryFile
{
    public static string Root { get; } = FindRoot();

    /// <summary>Requires that a golden file of a test project holds a text.</summary>
    public static void RequireSame(string path, string text)
    {
        var full = Path.Combine(Root, path);
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllText(full, text);
        }

        Assert.Equal(File.ReadAllText(full), text);
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
