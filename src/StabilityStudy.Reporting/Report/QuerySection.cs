using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Every data query that did not stop the report.</summary>
internal static class QuerySection
{
    public const string Title = "Data queries";

    private const string NothingToDo = "Nothing";

    public static Section Of(StudyAnalysis analysis)
    {
        var queries = analysis.Queries.OrderBy(query => query.Severity).ToLookup(IsForTheRecord);
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

    private static bool IsForTheRecord(DataQuery query) => query.Action.TrimEnd('.') == NothingToDo;

    private static Table TableOf(
        string caption,
        IEnumerable<DataQuery> queries,
        StudyAnalysis analysis,
        bool withAction
    )
    {
        ImmutableArray<Row> rows =
        [
            .. queries.Select(query => new Row([
                new TableCell(TradeWords.Of(query.Severity)),
                new TableCell(query.Source.ToString()),
                new TableCell(query.Message + Answered(query, analysis)),
                .. withAction ? [new TableCell(query.Action)] : ImmutableArray<TableCell>.Empty,
            ])),
        ];
        return new Table(
            caption,
            [
                new Column("Kind", ColumnAlignment.Left, 0.9),
                new Column("Where", ColumnAlignment.Left, 1.6),
                new Column("What", ColumnAlignment.Left, withAction ? 4.4 : 7.2),
                .. withAction
                    ? [new Column("What to do", ColumnAlignment.Left, 2.8)]
                    : ImmutableArray<Column>.Empty,
            ],
            rows,
            rows.IsEmpty ? "None." : null
        );
    }

    /// <summary>Says which deviation speaks of the specimen that a query is about, since it may be the answer.</summary>
    private static string Answered(DataQuery query, StudyAnalysis analysis)
    {
        var words = Words(query.Message).ToHashSet(StringComparer.Ordinal);
        var specimens = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Select(pair => pair.Specimen)
            .Where(words.Contains)
            .ToHashSet(StringComparer.Ordinal);
        return string.Concat(
            analysis
                .Facts.Deviations.Where(deviation => Words(deviation.Text).Any(specimens.Contains))
                .Select(deviation =>
                    FormattableString.Invariant(
                        $" A deviation of {deviation.On:yyyy-MM-dd} by {deviation.By} speaks of it."
                    )
                )
        );
    }

    private static string[] Words(string text) =>
        text.Split([' ', ',', ';', ':', '.', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
}
