using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// From which fields of messages times come. It follows from study.toml and the canonical data alone, so that it is found again from the files in
/// a report.
/// </summary>
internal static class SentTimes
{
    /// <summary>The columns of times; empty where results are no messages.</summary>
    /// <param name="resultsName">Name of the file of results, as study.toml gives it.</param>
    /// <param name="ofResults">How it is read.</param>
    /// <param name="ofTubes">How the file of tubes is read.</param>
    /// <param name="results">The results.</param>
    public static ImmutableArray<SentTime> Of(
        string resultsName,
        FileLayout? ofResults,
        FileLayout? ofTubes,
        ImmutableArray<ResultRow> results
    )
    {
        if (!MessageFile.IsName(resultsName) || ofResults is null)
        {
            return [];
        }

        var header = ofResults.HeaderOf(ResultColumns.TestedAt.Name);
        var tested = MessageColumns.All.FirstOrDefault(column => column.Name == header);
        return
        [
            .. ofTubes?.TimesFromMessages == true
                ? new[] { TubeColumns.CollectedAt.Name, TubeColumns.ReceivedAt.Name }.Select(
                    name => new SentTime(name, FieldOf(name), 0)
                )
                : [],
            .. tested is { Fields: var field }
                ?
                [
                    new SentTime(
                        ResultColumns.TestedAt.Name,
                        field,
                        results.Count(row => row is { TestedAt: not null, Instrument: "" })
                    ),
                ]
                : ImmutableArray<SentTime>.Empty,
        ];
    }

    private static string FieldOf(string name) =>
        MessageColumns.All.First(column => column.Name == name).Fields;
}
