using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>What stands on page 1 of a study's report, part by part.</summary>
internal static class FirstPageParts
{
    public static ImmutableArray<Block> Blocks(StudyAnalysis analysis)
    {
        var page = ReportBuilder.Build(analysis, PaperSize.A4).Sections[0];
        return [.. page.Blocks, .. page.Foot];
    }

    public static VerdictLine Verdict(StudyAnalysis analysis) =>
        FirstPage.Conclusions(analysis, withFigures: true).Lines[0];

    /// <summary>Table 1.</summary>
    public static DecisionTable Decisions(StudyAnalysis analysis) =>
        Blocks(analysis).OfType<DecisionTable>().Single();

    /// <summary>All running texts.</summary>
    public static string Paragraphs(StudyAnalysis analysis) =>
        string.Join("\n", Blocks(analysis).OfType<Paragraph>().Select(block => block.Text));

    /// <summary>Whether the criteria came first, and what is open.</summary>
    public static string CriteriaFirst(StudyAnalysis analysis) =>
        Blocks(analysis).OfType<KeyMessage>().Single(message => message.IsPlain).Text;

    public static Table Table(StudyAnalysis analysis) => ConclusionTable.Of(analysis);

    /// <summary>Texts of the cells of the table's data rows, joined by a bar.</summary>
    public static string[] Rows(StudyAnalysis analysis) =>
        [
            .. Table(analysis)
                .Rows.Where(row => row.Kind != RowKind.GroupHeading)
                .Select(row => string.Join('|', row.Cells.Select(cell => cell.Text))),
        ];

    /// <summary>The same study with one cell of its first sequence made otherwise.</summary>
    public static StudyAnalysis WithCell(
        StudyAnalysis analysis,
        int index,
        Func<Cell, Cell> otherwise
    )
    {
        var sequence = analysis.Sequences[0];
        return analysis with
        {
            Sequences = analysis.Sequences.SetItem(
                0,
                sequence with
                {
                    Cells = sequence.Cells.SetItem(index, otherwise(sequence.Cells[index])),
                }
            ),
        };
    }

    /// <summary>A query of a declared kind, or else of one of the last rank among attentions.</summary>
    public static DataQuery Query(string code) =>
        new(
            RaisedKinds.All.FirstOrDefault(kind => kind.Code == code)
                ?? new QueryKind(code, QueryRank.Outlier, "a kind", "nothing"),
            new QuerySource("results.csv", null, null),
            "",
            $"Message of {code}.",
            "Nothing."
        );
}
