using System.Globalization;
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

    /// <summary>How the messages are read: specimen and tube from order and specimen number, time point and run from free fields.</summary>
    public const string Read = """

        [read.results]
        columns = { specimen = "filler_order", tube = "specimen_id", analyte = "test_code", time_point = "laboratory_field_1", run = "laboratory_field_2", replicate = "sub_id" }

        """;

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
            .With("results.hl7", new ResultMessages(seed).File(Sent(example)))
            .With(
                StudyBytes.FactsName,
                GoodStudy.Utf8(
                    GoodStudy
                        .Text(example, StudyBytes.FactsName)
                        .Replace(
                            "results = \"results.csv\"",
                            "results = \"results.hl7\"",
                            StringComparison.Ordinal
                        ) + Read
                )
            );
    }

    private static StudyBytes Example(string name) =>
        ExampleStudyTests.Read(Path.Combine(RepositoryFile.Root, "example-studies", name));

    private static IEnumerable<ResultMessages.Sent> Sent(StudyBytes example)
    {
        var tubes = RowsOf(GoodStudy.Text(example, "specimens.csv"))
            .ToDictionary(row => (row["specimen"], row["tube"]));
        return Rows(example)
            .Select(row =>
            {
                var tube = tubes[(row["specimen"], row["tube"])];
                return new ResultMessages.Sent
                {
                    Tube = row["tube"],
                    Order = row["specimen"],
                    FieldOne = row["time_point"],
                    FieldTwo = row["run"],
                    Code = row["analyte"],
                    Replicate = row["replicate"],
                    Result = row["result"],
                    Unit = row["unit"],
                    Flag = row["flag"],
                    Instrument = row["instrument"],
                    Tested = TimeOf(row["tested_at"]),
                    Collected = TimeOf(tube["collected_at"]),
                    Received = TimeOf(tube["received_at"]),
                };
            });
    }

    private static DateTimeOffset? TimeOf(string text) =>
        text.Length > 0 ? DateTimeOffset.Parse(text, CultureInfo.InvariantCulture) : null;

    private static IEnumerable<Dictionary<string, string>> Rows(StudyBytes example) =>
        RowsOf(GoodStudy.Text(example, "results.csv"));

    private static IEnumerable<Dictionary<string, string>> RowsOf(string text)
    {
        var lines = text.TrimEnd('\n').Split('\n');
        var names = lines[0].Split(',');
        return lines[1..]
            .Select(line =>
                line.Split(',')
                    .Take(names.Length)
                    .Select((field, i) => (Name: names[i], Field: field))
                    .ToDictionary(item => item.Name, item => item.Field)
            );
    }
}
