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
        var changing = analysis
            .Sequences.SelectMany(sequence => Changing(analysis, sequence))
            .ToImmutableArray();
        var steady = analysis
            .Sequences.SelectMany(sequence => Steady(analysis, sequence))
            .ToImmutableArray();
        return new Section(
            "What could overturn this decision",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Each line asks what a time point's own data would conclude if one thing were otherwise. None of these lines decides; a conclusion that turns on a single specimen deserves a second look before it is put into force.",
                    ParagraphStyle.Body
                ),
                new Table(
                    "Choices that would change a conclusion",
                    [
                        new Column("Time", ColumnAlignment.Left, 0.8),
                        new Column("What is changed", ColumnAlignment.Left, 4.4),
                        new Column("Own conclusion", ColumnAlignment.Left, 1.8),
                        new Column("Would be", ColumnAlignment.Left, 1.8),
                        new Column("Direction", ColumnAlignment.Left, 2.2),
                    ],
                    changing,
                    changing.IsEmpty ? "None of those asked." : null
                ),
                new Table(
                    "Choices that would not",
                    [
                        new Column("Time", ColumnAlignment.Left, 0.8),
                        new Column("Own conclusion", ColumnAlignment.Left, 1.8),
                        new Column("Stays the same", ColumnAlignment.Left, 8.4),
                    ],
                    steady,
                    steady.IsEmpty ? "None of those asked." : null
                ),
            ]
        );
    }

    private static IEnumerable<Row> Changing(StudyAnalysis analysis, Sequence sequence)
    {
        var rows =
            from cell in sequence.Cells
            from line in cell.Robustness
            where line.Changes
            select new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                new TableCell(line.Question),
                Shaped(cell.OwnConclusion),
                Shaped(line.Conclusion),
                new TableCell(Direction(cell.OwnConclusion, line), Emphasis.Strong),
            ]);
        return Under(analysis, sequence, rows);
    }

    private static IEnumerable<Row> Steady(StudyAnalysis analysis, Sequence sequence)
    {
        var rows =
            from cell in sequence.Cells
            let questions = cell
                .Robustness.Where(line => !line.Changes)
                .Select(line => line.Question)
                .ToImmutableArray()
            where !questions.IsEmpty
            select new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                Shaped(cell.OwnConclusion),
                new TableCell(TradeWords.Capital(string.Join("; ", questions)) + "."),
            ]);
        return Under(analysis, sequence, rows);
    }

    private static IEnumerable<Row> Under(
        StudyAnalysis analysis,
        Sequence sequence,
        IEnumerable<Row> rows
    ) =>
        rows.Any()
            ? rows.Prepend(
                new Row(
                    [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
                    RowKind.GroupHeading
                )
            )
            : [];

    private static TableCell Shaped(Conclusion conclusion) =>
        new(TradeWords.Of(conclusion), Emphasis.Strong, TradeWords.ShapeOf(conclusion));

    private static string Direction(Conclusion own, RobustnessLine line) =>
        line.Direction switch
        {
            RobustnessDirection.TowardSupported => "toward supported",
            RobustnessDirection.None => "neither way",
            _ => own == Conclusion.Supported ? "away from supported" : "toward not supported",
        };
}
