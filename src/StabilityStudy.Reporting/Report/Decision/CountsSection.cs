using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>How many specimens and results are there, without any figure that a change could be seen from.</summary>
internal static class CountsSection
{
    public static Section Of(StudyAnalysis analysis) =>
        new(
            "Counts",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"Collection is not complete: {LookWords.ToCome(analysis)} specimens with a valid baseline. Changes and conclusions are not shown yet.",
                    ParagraphStyle.Lead
                ),
                new Table(
                    "Specimens and delayed results so far",
                    [
                        new Column("", ColumnAlignment.Left, 3),
                        new Column("Planned", ColumnAlignment.Right, 0.8),
                        new Column("Received", ColumnAlignment.Right, 0.9),
                        new Column("Baseline", ColumnAlignment.Right, 0.9),
                        new Column("Delayed results", ColumnAlignment.Left, 3),
                    ],
                    [.. analysis.Sequences.Select(sequence => RowOf(analysis, sequence))],
                    null
                ),
            ]
        );

    private static Row RowOf(StudyAnalysis analysis, Sequence sequence) =>
        new([
            new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis)),
            new TableCell(NumberText.Count(sequence.Collection.Planned)),
            new TableCell(
                NumberText.Count(
                    sequence.Cells.Select(cell => cell.Pairs.Length).DefaultIfEmpty().Max()
                )
            ),
            new TableCell(NumberText.Count(sequence.Collection.Usable)),
            new TableCell(
                string.Join(
                    ", ",
                    sequence.Cells.Select(cell =>
                        $"{NumberText.Count(cell.Pairs.Count(HasResult))} at {cell.Key.TimePoint}"
                    )
                )
            ),
        ]);

    private static bool HasResult(PairRecord pair) => pair.Delayed is { Result: not MissingResult };
}
