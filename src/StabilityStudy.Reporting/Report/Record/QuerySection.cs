using System.Text.RegularExpressions;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every data query that did not stop the report.</summary>
internal static class QuerySection
{
    public const string Title = "Data queries";

    public static Section Of(StudyAnalysis analysis)
    {
        var queries = analysis
            .Queries.OrderBy(query => query.Severity)
            .ToLookup(query => query.Rank == QueryRank.ForTheRecord);
        return new Section(
            Title,
            StartsOnNewPage: false,
            [
                TableOf("What needs an answer", queries[false], analysis, withAction: true),
                .. queries[true].Any()
                    ?
                    [
                        TableOf(
                            "For the record: nothing to do",
                            queries[true],
                            analysis,
                            withAction: false
                        ),
                    ]
                    : ImmutableArray<Block>.Empty,
            ]
        );
    }

    private static Table TableOf(
        string caption,
        IEnumerable<DataQuery> queries,
        StudyAnalysis analysis,
        bool withAction
    )
    {
        ImmutableArray<Row> rows =
        [
            .. queries
                .GroupBy(query => query.Severity)
                .SelectMany(kind =>
                    kind.Select(query => new Row([
                            new TableCell(query.Source.ToString()),
                            new TableCell(query.Message + Answered(query, analysis)),
                            .. withAction
                                ? [new TableCell(query.Action)]
                                : ImmutableArray<TableCell>.Empty,
                        ]))
                        .Prepend(
                            new Row(
                                [new TableCell(TradeWords.Capital(TradeWords.Of(kind.Key)))],
                                RowKind.GroupHeading
                            )
                        )
                ),
        ];
        return new Table(
            caption,
            [
                new Column("Where", ColumnAlignment.Left, 1.5),
                new Column("What", ColumnAlignment.Left, withAction ? 5 : 8),
                .. withAction
                    ? [new Column("What to do", ColumnAlignment.Left, 2.8)]
                    : ImmutableArray<Column>.Empty,
            ],
            rows,
            rows.IsEmpty ? "None." : null
        );
    }

    /// <summary>
    /// Says which deviation names the same specimen, since it may be the answer. A query of several specimens is not
    /// answered by a deviation of one, nor one of a time point by a deviation of another.
    /// </summary>
    private static string Answered(DataQuery query, StudyAnalysis analysis) =>
        query.Specimen is { } specimen
            ? string.Concat(
                analysis
                    .Facts.Deviations.Where(deviation =>
                        Names(deviation.Text, specimen.Code)
                        && (
                            specimen.TimePoint is not { } timePoint
                            || Names(deviation.Text, timePoint.ToString())
                        )
                    )
                    .Select(deviation =>
                        FormattableString.Invariant(
                            $" The deviation of {deviation.On:yyyy-MM-dd} by {deviation.By} names it too."
                        )
                    )
            )
            : "";

    /// <summary>Whether the words stand in the text, not as a part of longer ones: "6 h" is not in "16 h".</summary>
    private static bool Names(string text, string words) =>
        Regex.IsMatch(
            text,
            $@"(?<![\w-]){Regex.Escape(words)}(?![\w-])",
            RegexOptions.CultureInvariant,
            TimeSpan.FromSeconds(1)
        );
}
