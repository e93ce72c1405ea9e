using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>What each conclusion would be if one thing were otherwise.</summary>
internal static class RobustnessSection
{
    public static Section Of(StudyAnalysis analysis)
    {
        var rows = analysis
            .Sequences.SelectMany(sequence => Rows(analysis, sequence))
            .ToImmutableArray();
        return new Section(
            "What could overturn this decision",
            StartsOnNewPage: true,
            [
                new Paragraph(
                    "Each line asks what a time point's own data would conclude if one thing were otherwise. None of these lines decides; a conclusion that turns on a single specimen deserves a second look before it is put into force.",
                    ParagraphStyle.Body
                ),
                new Table(
                    "Conclusions under other choices",
                    [
                        new Column("Time", ColumnAlignment.Left, 0.8),
                        new Column("What is changed", ColumnAlignment.Left, 4.4),
                        new Column("Own conclusion", ColumnAlignment.Left, 1.8),
                        new Column("Would be", ColumnAlignment.Left, 1.8),
                        new Column("Direction", ColumnAlignment.Left, 1.8),
                    ],
                    rows,
                    rows.IsEmpty ? "Nothing was flagged, left out or close." : null
                ),
            ]
        );
    }

    private static IEnumerable<Row> Rows(StudyAnalysis analysis, Sequence sequence)
    {
        yield return new Row(
            [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
            RowKind.GroupHeading
        );
        foreach (var cell in sequence.Cells)
        {
            foreach (var line in cell.Robustness)
            {
                yield return new Row([
                    new TableCell(cell.Key.TimePoint.ToString()),
                    new TableCell(line.Question),
                    Shaped(cell.OwnConclusion, line.Changes),
                    Shaped(line.Conclusion, line.Changes),
                    new TableCell(
                        Direction(cell.OwnConclusion, line),
                        line.Changes ? Emphasis.Strong : Emphasis.Muted
                    ),
                ]);
            }
        }
    }

    private static TableCell Shaped(Conclusion conclusion, bool changes) =>
        new(
            TradeWords.Of(conclusion),
            changes ? Emphasis.Strong : Emphasis.Muted,
            TradeWords.ShapeOf(conclusion)
        );

    private static string Direction(Conclusion own, RobustnessLine line) =>
        !line.Changes ? "no change"
        : line.Conclusion == Conclusion.Supported ? "toward supported"
        : own == Conclusion.Supported ? "away from supported"
        : "other";
}
