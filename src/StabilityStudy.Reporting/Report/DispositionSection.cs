using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>What became of every specimen at every time point; each row adds up.</summary>
internal static class DispositionSection
{
    public const string Title = "What became of every specimen";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Nothing is dropped silently: received is the sum of the columns to its right. Compared pairs enter every figure; failed tubes, results beyond the measuring interval and delayed results missing without a stated reason count for the single-specimen criteria only.",
                    ParagraphStyle.Body
                ),
                Counts(analysis),
                .. ControlTable.Of(analysis) is { } controls
                    ? [controls]
                    : ImmutableArray<Block>.Empty,
                new KeepTogether([LeftOut(analysis)]),
            ]
        );

    private static Table Counts(StudyAnalysis analysis) =>
        new(
            "Specimens by group and time point",
            [
                new Column("Time", ColumnAlignment.Left, 0.9),
                new Column("Planned", ColumnAlignment.Right, 1.1),
                new Column("Received", ColumnAlignment.Right, 1.2),
                new Column("Compared", ColumnAlignment.Right, 1.3),
                new Column("Failed", ColumnAlignment.Right, 0.9),
                new Column("Beyond interval", ColumnAlignment.Right, 1.1),
                new Column("Excluded", ColumnAlignment.Right, 1.2),
                new Column("No delayed result", ColumnAlignment.Right, 1.2),
                new Column("No valid baseline", ColumnAlignment.Right, 1.2),
                new Column("Wrong time", ColumnAlignment.Right, 0.9),
                new Column("Not eligible", ColumnAlignment.Right, 1.1),
                .. HasNotAssigned(analysis)
                    ? [new Column("Not assigned", ColumnAlignment.Right, 1.1)]
                    : ImmutableArray<Column>.Empty,
            ],
            [.. analysis.Sequences.SelectMany(sequence => Rows(analysis, sequence))],
            null
        );

    private static IEnumerable<Row> Rows(StudyAnalysis analysis, Sequence sequence)
    {
        yield return new Row(
            [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
            RowKind.GroupHeading
        );
        foreach (var cell in sequence.Cells)
        {
            yield return new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                new TableCell(NumberText.Count(cell.Disposition.Planned)),
                new TableCell(NumberText.Count(cell.Disposition.Received), Emphasis.Strong),
                .. new PairStatus[]
                {
                    PairStatus.Compared,
                    PairStatus.Failed,
                    PairStatus.BeyondInterval,
                    PairStatus.Excluded,
                    PairStatus.NoDelayedResult,
                    PairStatus.BaselineInvalid,
                    PairStatus.OutsideTiming,
                    PairStatus.Ineligible,
                }
                    .Concat(HasNotAssigned(analysis) ? [PairStatus.NotAssigned] : [])
                    .Select(status => new TableCell(
                        NumberText.Count(cell.Disposition.Count(status))
                    )),
            ]);
        }
    }

    private static bool HasNotAssigned(StudyAnalysis analysis) =>
        analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .Any(cell => cell.Disposition.Count(PairStatus.NotAssigned) > 0);

    private static Table LeftOut(StudyAnalysis analysis)
    {
        var rows = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell =>
                cell.Pairs.Where(pair =>
                        pair.Status is not (PairStatus.Compared or PairStatus.NotAssigned)
                    )
                    .Select(pair => (cell.Key, Pair: pair))
            )
            .Select(item => new Row([
                new TableCell(item.Pair.Specimen),
                new TableCell(item.Key.Analyte),
                new TableCell(item.Key.TimePoint.ToString()),
                new TableCell(TradeWords.Of(item.Pair)),
                new TableCell(item.Pair.Reason),
            ]))
            .ToImmutableArray();
        return new Table(
            "Every specimen that is not compared, with the reason",
            [
                new Column("Specimen", ColumnAlignment.Left, 1.2),
                new Column("Analyte", ColumnAlignment.Left, 1),
                new Column("Time", ColumnAlignment.Left, 0.8),
                new Column("What became of it", ColumnAlignment.Left, 2.6),
                new Column("Reason", ColumnAlignment.Left, 5),
            ],
            rows,
            rows.IsEmpty ? "None." : null
        );
    }
}
