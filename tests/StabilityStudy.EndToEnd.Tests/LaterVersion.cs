using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Versions;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>
/// The program as a later version could be: built from a copy of its sources with another version, a changed sentence, one
/// estimate more and one data query more, and with this version among those released before it.
/// </summary>
public sealed class LaterVersion : IAsyncLifetime
{
    /// <summary>The version of the copy.</summary>
    public const string Version = "99.1.0";

    private static readonly string[] s_buildFiles =
    [
        "Directory.Build.props",
        "Directory.Build.targets",
        "Directory.Packages.props",
        "global.json",
        ".editorconfig",
    ];

    private readonly string _root = Directory
        .CreateTempSubdirectory("stability-study-later-")
        .FullName;

    public async ValueTask InitializeAsync()
    {
        foreach (var name in s_buildFiles)
        {
            File.Copy(Path.Combine(RepositoryFile.Root, name), At(name));
        }

        CopyFolder("src");
        CopyFolder("protocols");
        // What the program carries to prove itself.
        CopyFolder("tests/ReferenceData");
        Change("Directory.Build.props", $">{ToolVersion.Current}<", $">{Version}<");
        Change(
            "src/StabilityStudy.Reporting/Report/Record/CautionSection.cs",
            "For qualified laboratory staff.",
            "For laboratory staff who are qualified."
        );
        Change(
            "src/StabilityStudy.Files/Json/Forms/EstimateForms.cs",
            "{ \"compared\", v => v.Compared, Form.Count },",
            "{ \"compared\", v => v.Compared, Form.Count }, { \"addedEstimate\", v => v.Compared / 2.0, Form.Number },"
        );
        Change(
            "src/StabilityStudy.Core/Analysis/StudyAnalyzer.cs",
            ".Concat(StudyQueries.Of(rows, sequences));",
            ".Concat(StudyQueries.Of(rows, sequences)).Append(new DataQuery(new QueryKind(\"added-query\", QueryRank.Note, \"added\", \"nothing\"), new QuerySource(\"results.csv\", null, null), \"\", \"An added query.\", \"Nothing.\"));"
        );
        var released = Directory.CreateDirectory(
            At("src/StabilityStudy.Pipeline/Versions/Released")
        );
        await File.WriteAllTextAsync(
            Path.Combine(released.FullName, ToolVersion.Current + ".txt"),
            ReleasedVersion.Current.ToText()
        );
        var built = await BuiltProgram.Dotnet(
            "build",
            At("src/StabilityStudy.Cli"),
            "-o",
            At("built"),
            // What was checked when the tests were built, and what nothing here reads.
            "-p:RunAnalyzers=false",
            "-p:GenerateDocumentationFile=false",
            "-p:ProduceReferenceAssembly=false",
            "-p:DebugType=none",
            "-p:NuGetAudit=false",
            "-v",
            "q"
        );
        Assert.True(built.ExitCode == 0, built.Out + built.Error);
    }

    /// <summary>Runs it.</summary>
    internal Task<Answer> Run(params string[] arguments) =>
        BuiltProgram.Dotnet([At("built/stability-study.dll"), .. arguments]);

    public ValueTask DisposeAsync()
    {
        Directory.Delete(_root, recursive: true);
        return ValueTask.CompletedTask;
    }

    private string At(string name) => Path.Combine(_root, name);

    private void Change(string name, string from, string to)
    {
        var text = File.ReadAllText(At(name));
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(At(name), text.Replace(from, to, StringComparison.Ordinal));
    }

    private void CopyFolder(string name)
    {
        foreach (
            var file in Directory
                .EnumerateFiles(
                    Path.Combine(RepositoryFile.Root, name),
                    "*",
                    SearchOption.AllDirectories
                )
                .Where(IsSource)
        )
        {
            var target = At(Path.GetRelativePath(RepositoryFile.Root, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private static bool IsSource(string file) =>
        !file.Split(Path.DirectorySeparatorChar).Any(folder => folder is "bin" or "obj");
}
