using System.Text;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>The example study that the README starts with, and edits of it.</summary>
internal static class ExampleStudy
{
    public const string Protocol = "protocol.toml";
    public const string Facts = "study.toml";
    public const string Specimens = "specimens.csv";
    public const string Results = "results.csv";
    public const string Controls = "controls.csv";

    /// <summary>Folder of the example of one sheet of pairs.</summary>
    public static string SmallFolder { get; } =
        Path.Combine(RepositoryFile.Root, "example-studies", "small-paired-sheet");

    public static string Folder { get; } =
        Path.Combine(RepositoryFile.Root, "example-studies", "aptt-room-temperature");

    public static StudyBytes Bytes { get; } =
        StudyBytes.Of(
            new[] { Protocol, Facts, Specimens, Results, Controls }.Select(name =>
                KeyValuePair.Create(
                    name,
                    (ReadOnlyMemory<byte>)File.ReadAllBytes(Path.Combine(Folder, name))
                )
            )
        );

    /// <summary>The files of an example by the name of its folder.</summary>
    public static StudyBytes OfFolder(string name) =>
        StudyBytes.Of(
            Directory
                .GetFiles(Path.Combine(RepositoryFile.Root, "example-studies", name))
                .Where(file => Path.GetExtension(file) is ".toml" or ".csv" or ".lock")
                .Order(StringComparer.Ordinal)
                .Select(file =>
                    KeyValuePair.Create(
                        Path.GetFileName(file),
                        (ReadOnlyMemory<byte>)File.ReadAllBytes(file)
                    )
                )
        );

    public static string Text(string name) => Text(Bytes, name);

    public static string Text(StudyBytes files, string name) =>
        Encoding.UTF8.GetString(files.Files[name].Span);

    public static StudyBytes With(string name, string text) => Bytes.WithText(name, text);

    public static StudyBytes WithText(this StudyBytes files, string name, string text) =>
        files.With(name, Encoding.UTF8.GetBytes(text));

    /// <summary>The example with the first occurrence of a text replaced.</summary>
    public static StudyBytes Edited(string name, string from, string to) =>
        Bytes.Edited(name, from, to);

    public static StudyBytes Edited(this StudyBytes files, string name, string from, string to)
    {
        var text = Text(files, name);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{name} does not hold {from}");
        return files.WithText(name, text[..at] + to + text[(at + from.Length)..]);
    }

    private static readonly Lazy<AnalyzedStudy> s_analyzed = new(() => Analyze(Bytes));

    /// <summary>The example as it is, analyzed once for all tests.</summary>
    public static AnalyzedStudy Analyzed => s_analyzed.Value;

    /// <summary>The analyzed study; fails the test with the queries when one stops it, and where its analysis.json is not that of the schema.</summary>
    public static AnalyzedStudy Analyze(StudyBytes files)
    {
        var outcome = StudyPipeline.Analyze(files);
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        Assert.Equal("", PublishedSchema.FaultsOf(StudyPipeline.WriteAnalysis(study)));
        return study;
    }
}
