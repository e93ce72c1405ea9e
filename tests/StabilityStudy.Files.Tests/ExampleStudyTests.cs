using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Tests;

public sealed class ExampleStudyTests
{
    public static TheoryData<string> Studies =>
        [
            .. Directory
                .GetDirectories(Path.Combine(RepositoryFile.Root, "example-studies"))
                .Where(folder => File.Exists(Path.Combine(folder, "protocol.toml"))),
        ];

    [Theory]
    [MemberData(nameof(Studies))]
    public void An_example_study_reads_without_a_stop_query(string folder)
    {
        var outcome = StudyIntake.Read(Read(folder));

        Assert.Empty(outcome.Queries.Where(query => query.Severity == Severity.Stop));
    }

    /// <summary>The files of the repository; a command that was run on the example left its record there.</summary>
    internal static StudyBytes Read(string folder) =>
        StudyBytes.Of(
            Directory
                .GetFiles(folder)
                .Where(path => Path.GetFileName(path) != StudyRecord.Name)
                .Select(path =>
                    KeyValuePair.Create(
                        Path.GetFileName(path),
                        (ReadOnlyMemory<byte>)File.ReadAllBytes(path)
                    )
                )
        );
}
