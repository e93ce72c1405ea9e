using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

public sealed class ReferenceRuleTests
{
    /// <summary>Which project may use which package.</summary>
    private static readonly Dictionary<string, string[]> s_packages = new(StringComparer.Ordinal)
    {
        ["Statistics"] = ["MathNet.Numerics"],
        ["Core"] = [],
        ["Files"] = ["CsvHelper", "ExcelDataReader", "Tomlyn"],
        ["SignedPdf"] = ["SharpZipLib", "System.Security.Cryptography.Pkcs"],
        ["Reporting"] = ["PDFsharp", "ScottPlot", "ZXing.Net"],
        ["Pipeline"] = [],
        ["Cli"] = ["System.CommandLine"],
    };

    /// <summary>ScottPlot hands out the drawing surface of the library it stands on.</summary>
    private static readonly string[] s_throughScottPlot = ["SkiaSharp"];

    public static TheoryData<string> Names => [.. Projects.Names];

    [Fact]
    public void Every_project_under_src_is_one_of_the_guide() =>
        Assert.Equal(
            Projects.Names.Select(name => "StabilityStudy." + name).Order(StringComparer.Ordinal),
            Directory
                .GetDirectories(Path.Combine(RepositoryFile.Root, "src"))
                .Select(folder => Path.GetFileName(folder))
                .Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Names))]
    public void A_project_refers_to_what_the_guide_says(string name) =>
        Assert.Equal(
            Projects.AllowedByGuide(name).Order(StringComparer.Ordinal),
            Projects.InProjectFile(name, "ProjectReference").Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Names))]
    public void References_go_in_one_direction(string name)
    {
        var before = Projects.Names[..Projects.Names.IndexOf(name)];

        Assert.All(
            Projects
                .Load(name)
                .GetReferencedAssemblies()
                .Select(reference => reference.Name!)
                .Where(reference =>
                    reference.StartsWith("StabilityStudy.", StringComparison.Ordinal)
                ),
            reference => Assert.Contains(reference["StabilityStudy.".Length..], before)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_project_uses_only_its_own_packages(string name)
    {
        Assert.Equal(s_packages[name], Projects.InProjectFile(name, "PackageReference"));
        Assert.All(
            Projects
                .Load(name)
                .GetReferencedAssemblies()
                .Select(reference => reference.Name!)
                .Where(reference => !IsOurs(reference) && !IsOfDotNet(reference)),
            reference =>
                Assert.Contains(
                    [.. s_packages[name], .. name == "Reporting" ? s_throughScottPlot : []],
                    package =>
                        reference.Contains(package, StringComparison.OrdinalIgnoreCase)
                        || package.Contains(reference, StringComparison.OrdinalIgnoreCase)
                )
        );
    }

    [Fact]
    public void Only_Statistics_calls_MathNet() =>
        Assert.Equal(
            ["Statistics"],
            Projects.Names.Where(name =>
                Projects
                    .Load(name)
                    .GetReferencedAssemblies()
                    .Any(reference => reference.Name == "MathNet.Numerics")
            )
        );

    private static bool IsOurs(string reference) =>
        reference.StartsWith("StabilityStudy.", StringComparison.Ordinal);

    private static bool IsOfDotNet(string reference) =>
        (
            reference.StartsWith("System.", StringComparison.Ordinal)
            && reference != "System.CommandLine"
        ) || reference is "System" or "netstandard" or "mscorlib";
}
