using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
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

    public static TheoryData<string> Protocols =>
        [.. Directory.GetFiles(Path.Combine(RepositoryFile.Root, "protocols"), "*.toml")];

    [Theory]
    [MemberData(nameof(Studies))]
    public void An_example_study_reads_without_a_stop_query(string folder)
    {
        var outcome = StudyIntake.Read(Read(folder));

        Assert.Empty(outcome.Queries.Where(query => query.Severity == Severity.Stop));
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void A_ready_protocol_asks_only_for_the_sources_that_its_user_must_put_in(string path)
    {
        var queries = ProtocolReader.Read(File.ReadAllBytes(path), "protocol.toml").Queries;

        Assert.Empty(
            queries
                .Select(query => query.Code)
                .Except([
                    "source-from-memory",
                    "source-is-an-example",
                    "manufacturer-limit-not-stated",
                    // The sheet of pairs has no fill and no hematocrit, and its protocol says so.
                    .. Path.GetFileName(path) == "small-paired-sheet.toml"
                        ? ["eligibility-lax"]
                        : Array.Empty<string>(),
                ])
        );
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
