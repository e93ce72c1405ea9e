using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>Whether a statement that a tube was not drawn counts. The zero member is the cautious answer.</summary>
internal enum NotDrawnStanding
{
    /// <summary>It was stated after the day of collection, when the result could be known: the missing result stays a loss.</summary>
    StatedAfterwards,

    /// <summary>A result row of the tube says otherwise.</summary>
    HasResult,

    /// <summary>It counts: there is no such tube.</summary>
    Counts,
}

/// <summary>The tubes that study.toml states not to have been drawn, held against the rows.</summary>
internal static class NotDrawnTubes
{
    /// <summary>Each statement with its standing. A tube serves every analyte, so a row of any of them contradicts it.</summary>
    public static ImmutableArray<(NotDrawn Statement, NotDrawnStanding Standing)> Of(
        StudyRows rows
    ) =>
        [
            .. rows.Inputs.Facts.NotDrawn.Select(item =>
                (
                    item,
                    StandingOf(
                        item,
                        [.. rows.TubesOf(item.Specimen)],
                        rows.ResultsOf(item.Specimen)
                            .Where(row => row.Occasion.TimePoint == item.TimePoint)
                    )
                )
            ),
        ];

    /// <summary>A row without time, result and reason, or "not tested", is what a sheet of pairs has for a tube that is not there.</summary>
    private static bool SaysThatThereIsATube(ResultRow row) =>
        row
            is not {
                TestedAt: null,
                Flag: "",
                Result: MissingResult
                {
                    Reason: MissingReason.NoReportableResult or MissingReason.NotTested
                }
            };

    private static NotDrawnStanding StandingOf(
        NotDrawn statement,
        ImmutableArray<TubeRow> tubes,
        IEnumerable<ResultRow> results
    )
    {
        var ofStorage = tubes
            .Where(tube => (statement.Storage ?? tube.Storage) == tube.Storage)
            .Select(tube => tube.Tube)
            .ToHashSet();
        return results.Any(row => ofStorage.Contains(row.Tube) && SaysThatThereIsATube(row))
                ? NotDrawnStanding.HasResult
            : tubes.Any(tube => statement.On > DateOnly.FromDateTime(tube.CollectedAt.DateTime))
                ? NotDrawnStanding.StatedAfterwards
            : NotDrawnStanding.Counts;
    }
}
