using System.Globalization;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>Rows of results.csv as they are sent in messages.</summary>
internal static class SentRows
{
    /// <summary>How the messages are read: specimen and tube from order and specimen number, time point and run from free fields.</summary>
    public const string Read = """

        [read.results]
        columns = { specimen = "filler_order", tube = "specimen_id", analyte = "test_code", time_point = "laboratory_field_1", run = "laboratory_field_2", replicate = "sub_id" }

        """;

    /// <summary>The results with the times of their tubes.</summary>
    public static IEnumerable<ResultMessages.Sent> Of(string results, string specimens)
    {
        var tubes = RowsOf(specimens).ToDictionary(row => (row["specimen"], row["tube"]));
        return RowsOf(results)
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

    /// <summary>The rows of a table without quotes.</summary>
    public static IEnumerable<Dictionary<string, string>> RowsOf(string text)
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

    private static DateTimeOffset? TimeOf(string text) =>
        text.Length > 0 ? DateTimeOffset.Parse(text, CultureInfo.InvariantCulture) : null;
}
