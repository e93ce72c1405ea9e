namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>What became of every specimen at every time point; the numbers add up.</summary>
internal static class DispositionSection
{
    public const string Title = "What became of every specimen";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Nothing is dropped silently: compared specimens and those beside them add up to those received. Compared pairs enter every figure; failed, beyond the interval or missing without reason count for single specimens only.",
                    ParagraphStyle.Body
                ),
                .. analysis.Sequences.Select(sequence => DispositionFlow.Of(analysis, sequence)),
                new KeepTogether([LeftOut(analysis)]),
            ]
        );

    private static Table LeftOut(StudyAnalysis analysis)
    {
        var rows = analysis
            .Sequences.SelectMany(sequence =>
                sequence.Cells.Select(cell =>
                    (Cell: cell, Subject: SequenceNames.Of(analysis, sequence).Title(analysis))
                )
            )
            .SelectMany(item =>
                item.Cell.Pairs.Where(pair =>
                        pair.Status is not (PairStatus.Compared or PairStatus.NotAssigned)
                    )
                    .Select(pair => (item.Cell.Key, item.Subject, Pair: pair))
            )
            .GroupBy(item =>
                (
                    item.Pair.Specimen,
                    item.Key.Analyte,
                    item.Subject,
                    What: TradeWords.Of(item.Pair),
                    item.Pair.Reason
                )
            )
            .Select(item => new Row([
                new TableCell(item.Key.Specimen),
                new TableCell(item.Key.Analyte),
                new TableCell(
                    string.Join(", ", item.Select(pair => pair.Key.TimePoint).Distinct())
                ),
                new TableCell(item.Key.What),
                new TableCell(item.Key.Reason),
            ])
            {
                Subject = item.Key.Subject,
            })
            .ToImmutableArray();
        return new Table(
            "Every specimen that is not compared, with the reason",
            [
                new Column("Specimen", ColumnAlignment.Left, 0.9) { IsOfSpecimens = true },
                new Column("Analyte", ColumnAlignment.Left, 0.7),
                new Column("Time", ColumnAlignment.Left, 0.9),
                new Column("What became of it", ColumnAlignment.Left, 2.8),
                new Column("Reason", ColumnAlignment.Left, 5.6),
            ],
            rows,
            rows.IsEmpty ? "None." : null
        );
    }
}
