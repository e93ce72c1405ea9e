using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Statements that a tube was not drawn which do not count, because they came too late or a result contradicts them.</summary>
internal static class NotDrawnQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind NotDrawnStatedAfterwards = Kinds.Add("not-drawn-stated-afterwards", QueryRank.Exclusion, "a tube was stated not to have been drawn only after the day of collection; it does not count as not drawn", "correct the day when it is wrong; otherwise nothing, the missing result counts as a loss");
    internal static readonly QueryKind NotDrawnHasResult = Kinds.Add("not-drawn-has-result", QueryRank.Exclusion, "a tube stated not to have been drawn has a row in results.csv, which is used", "remove the statement, or the row if it belongs to another tube");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        NotDrawnTubes
            .Of(rows)
            .SelectMany(item =>
                item.Standing switch
                {
                    NotDrawnStanding.StatedAfterwards => new[]
                    {
                        Query(
                            NotDrawnStatedAfterwards,
                            item.Statement,
                            FormattableString.Invariant($"{item.Statement.On:yyyy-MM-dd}"),
                            "was stated after the day of collection: it does not count as not drawn."
                        ),
                    },
                    NotDrawnStanding.HasResult =>
                    [
                        Query(
                            NotDrawnHasResult,
                            item.Statement,
                            item.Statement.TimePoint.ToString(),
                            "is contradicted by a row in results.csv, which is used."
                        ),
                    ],
                    NotDrawnStanding.Counts => [],
                }
            );

    private static DataQuery Query(
        QueryKind kind,
        NotDrawn statement,
        string observed,
        string message
    ) =>
        new(
            kind,
            new("study.toml", statement.Line, "not_drawn"),
            observed,
            $"That the {statement.TimePoint} tube of specimen {statement.Specimen} was not drawn {message}"
        )
        {
            Specimen = new(statement.Specimen, statement.TimePoint),
        };
}
