using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Every data query that did not stop the report.</summary>
internal static class QuerySection
{
    public const string Title = "Data queries";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Table(
                    "Everything in the files that needs an answer",
                    [
                        new Column("Kind", ColumnAlignment.Left, 0.9),
                        new Column("Where", ColumnAlignment.Left, 1.6),
                        new Column("What", ColumnAlignment.Left, 4.4),
                        new Column("What to do", ColumnAlignment.Left, 2.8),
                    ],
                    [
                        .. analysis
                            .Queries.OrderBy(query => query.Severity)
                            .Select(query => new Row([
                                new TableCell(TradeWords.Of(query.Severity)),
                                new TableCell(query.Source.ToString()),
                                new TableCell(query.Message),
                                new TableCell(query.Action),
                            ])),
                    ],
                    analysis.Queries.IsEmpty ? "None." : null
                ),
            ]
        );
}
