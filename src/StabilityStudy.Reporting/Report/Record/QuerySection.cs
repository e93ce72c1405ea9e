using System.Text.RegularExpressions;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every data query that did not stop the report.</summary>
internal static class QuerySection
{
    public const string Title = "Open queries";

    /// <summary>What needs an answer and has no line of its own on page 1.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether also what page 1 states, and what is only for the record, is listed.</param>
    public static Section Of(StudyAnalysis analysis, bool full)
    {
        var queries = analysis.Queries.ToLookup(query => OpenQueries.IsOpen(analysis, query));
        var further = queries[false].Count();
        return new(
            Title,
            StartsOnNewPage: false,
            [
                TableOf("What needs an answer", queries[true], analysis),
                .. further == 0 ? []
                : full ? [TableOf("Stated on page 1, or for the record", queries[false], analysis)]
                : new Block[]
                {
                    new Paragraph(
                        $"{NumberText.Count(further)} further, stated on page 1 or only for the record: analysis.json, the HTML form, and a report made with --full.",
                        ParagraphStyle.Small
                    ),
                },
            ]
        );
    }

    private static Table TableOf(
        string caption,
        IEnumerable<DataQuery> queries,
        StudyAnalysis analysis
    )
    {
        ImmutableArray<Row> rows =
        [
            .. queries
                .OrderBy(query => query.Rank)
                .Select(query => new Row([
                    new TableCell(query.Source.ToString()),
                    new TableCell(
                        query.Message + Answered(query, analysis) + Answer(query, analysis)
                    ),
                    new TableCell(query.Action),
                ])),
        ];
        return new Table(
            caption,
            [
                new Column("Where", ColumnAlignment.Left, 2.2),
                new Column("What", ColumnAlignment.Left, 4.8),
                new Column("What to do", ColumnAlignment.Left, 3.6),
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

    /// <summary>What a person of the study has answered.</summary>
    private static string Answer(DataQuery query, StudyAnalysis analysis) =>
        analysis.Facts.Answers.IsEmpty ? ""
        : QueryReference.Of(query) is var reference
        && analysis.Facts.Answers.FirstOrDefault(answer => answer.Query == reference)
            is { } answered
            ? FormattableString.Invariant(
                $" Answered by {answered.By} on {answered.On:yyyy-MM-dd}: {answered.Text}"
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
