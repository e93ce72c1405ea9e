using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>The results of the example studies as messages, and as a table with the same columns.</summary>
internal static class SentExample
{
    private static readonly string[] Columns =
    [
        "specimen",
        "tube",
        "analyte",
        "time_point",
        "replicate",
        "tested_at",
        "result",
        "unit",
        "run",
        "instrument",
        "flag",
    ];

    /// <summary>An example without the columns for which a message has no field that is read: persons, remarks and lots.</summary>
    public static StudyBytes Plain(string name)
    {
        var example = Example(name);
        return example.With(
            "results.csv",
            GoodStudy.Utf8(
                string.Join(
                    '\n',
                    Rows(example)
                        .Select(row => string.Join(',', Columns.Select(column => row[column])))
                        .Prepend(string.Join(',', Columns))
                ) + "\n"
            )
        );
    }

    /// <summary>The same with its results as messages.</summary>
    public static StudyBytes AsMessages(string name, int seed)
    {
        var example = Example(name);
        return new StudyBytes(example.Files.Remove("results.csv"))
            .With(
                "results.hl7",
                new ResultMessages(seed).File(
                    SentRows.Of(
                        GoodStudy.Text(example, "results.csv"),
                        GoodStudy.Text(example, "specimens.csv")
                    )
                )
            )
            .With(
                StudyBytes.FactsName,
                GoodStudy.Utf8(
                    GoodStudy
                        .Text(example, StudyBytes.FactsName)
                        .Replace(
                            "results = \"results.csv\"",
                            "results = \"results.hl7\"",
                            StringComparison.Ordinal
                        ) + SentRows.Read
                )
            );
    }

    private static StudyBytes Example(string name) =>
        ExampleStudyTests.Read(Path.Combine(RepositoryFile.Root, "example-studies", name));

    private static IEnumerable<Dictionary<string, string>> Rows(StudyBytes example) =>
        SentRows.RowsOf(GoodStudy.Text(example, "results.csv"));
}
