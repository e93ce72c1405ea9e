using System.Reflection;
using System.Xml.Linq;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

/// <summary>The projects under src, as the contributor guide lists them, as their files refer to each other and as they were built.</summary>
internal static class Projects
{
    private const string Prefix = "StabilityStudy.";

    /// <summary>Short names in the order of the guide: each refers only to those before it.</summary>
    public static ImmutableArray<string> Names { get; } =
    ["Statistics", "Core", "Files", "SignedPdf", "Reporting", "Pipeline", "Cli"];

    public static Assembly Load(string name) =>
        Assembly.Load(name == "Cli" ? "stability-study" : Prefix + name);

    /// <summary>The last column of the guide's table.</summary>
    public static ImmutableArray<string> AllowedByGuide(string name)
    {
        var row = File.ReadAllLines(Path.Combine(RepositoryFile.Root, "DEVELOPERS.md"))
            .Single(line => line.StartsWith($"| `{Prefix}{name}` |", StringComparison.Ordinal));
        var cell = row.Trim(' ', '|').Split('|')[^1].Trim();
        return cell switch
        {
            "nothing of ours" => [],
            "the five above" => Names[..5],
            _ => [.. cell.Split(", ")],
        };
    }

    public static ImmutableArray<string> InProjectFile(string name, string element)
    {
        var file = XDocument.Load(
            Path.Combine(RepositoryFile.Root, "src", Prefix + name, Prefix + name + ".csproj")
        );
        return
        [
            .. file.Descendants(element)
                .Select(reference => reference.Attribute("Include")!.Value.Replace('\\', '/'))
                .Select(path => Path.GetFileName(path))
                .Select(path => element == "ProjectReference" ? path[Prefix.Length..^7] : path),
        ];
    }
}
