namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every specimen with its results, so that any figure can be recomputed.</summary>
internal static class PairSection
{
    public const string Title = "Every specimen";

    /// <summary>Beyond this number the results are in the attached files only, and the report says so.</summary>
    private const int MostPairs = 2000;

    /// <summary>With more time points a result is set in two lines rather than its remark in three.</summary>
    private const int MostWithRoom = 3;

    /// <summary>The section.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether each pair has a row of its own, with its times and lines.</param>
    public static Section Of(StudyAnalysis analysis, bool full)
    {
        var count = analysis.Sequences.Sum(sequence =>
            sequence.Cells.Sum(cell => cell.Pairs.Length)
        );
        return new Section(
            Title,
            StartsOnNewPage: false,
            count > MostPairs
                ?
                [
                    new Paragraph(
                        $"The study has {NumberText.Count(count)} pairs; they are listed in the attached results.csv and analysis.json only.",
                        ParagraphStyle.Body
                    ),
                ]
                :
                [
                    .. analysis.Sequences.Select(sequence =>
                        full ? PairTable.Of(analysis, sequence) : TableOf(analysis, sequence)
                    ),
                ]
        );
    }

    private static Table TableOf(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var cells = sequence.Cells;
        return new Table(
            names.Analyte.IsQualitative
                ? $"{names.Title(analysis)}: classes"
                : $"{names.Title(analysis)}: results in {names.Analyte.ShownUnit}",
            [
                new Column("Specimen", ColumnAlignment.Left, 1.1),
                new Column("Collected", ColumnAlignment.Left, 1.1),
                new Column("Baseline, after", ColumnAlignment.Left, 1.3),
                .. cells.Select(cell => new Column(
                    $"{cell.Key.TimePoint}: delayed, after; change",
                    ColumnAlignment.Left,
                    cells.Length > MostWithRoom ? 2 : 2.3
                )),
                new Column("Remark", ColumnAlignment.Left, cells.Length > MostWithRoom ? 3 : 2.7),
            ],
            [
                .. cells
                    .SelectMany(cell => cell.Pairs)
                    .GroupBy(pair => pair.Specimen)
                    .OrderBy(pairs => pairs.Key, StringComparer.Ordinal)
                    .Select(pairs => Row(cells, [.. pairs])),
            ],
            "After: actual delay since collection, in hours:minutes. Change in percent of the baseline. Outside: counts as outside the allowable difference. Stands out: flagged, kept in every figure. Across: changed the side of that decision level. Tubes, runs, instruments, lots, persons, spinning and the lines of the laboratory's own files stand in the attached results.csv and specimens.csv."
        );
    }

    private static Row Row(ImmutableArray<Cell> cells, ImmutableArray<PairRecord> pairs)
    {
        var first = pairs[0];
        var baseline = pairs
            .Select(pair => pair.Baseline)
            .FirstOrDefault(found => found is not null);
        string[] remarks =
        [
            .. from cell in cells
            from pair in cell.Pairs
            where pair.Specimen == first.Specimen
            from remark in PairTexts.Remarks(cell, pair)
            group cell.Key.TimePoint by remark into times
            select $"{string.Join(", ", times)} {times.Key}",
        ];
        return new Row([
            new TableCell(first.Specimen),
            new TableCell(first.CollectionDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            new TableCell(Measured(baseline)),
            .. cells.Select(cell =>
                cell.Pairs.FirstOrDefault(pair => pair.Specimen == first.Specimen) is { } pair
                    ? new TableCell(
                        Delayed(pair),
                        pair.Status == PairStatus.Compared ? Emphasis.None : Emphasis.Muted
                    )
                    : new TableCell("")
            ),
            new TableCell(string.Join("; ", remarks)),
        ]);
    }

    /// <summary>"36.2, 6:05; +4.3 %".</summary>
    private static string Delayed(PairRecord pair) =>
        Measured(pair.Delayed)
        + (
            pair.IsOfNumbers && pair.ChangePercent is not null ? $"; {PairTexts.Percent(pair)} %"
            : pair.IsOfNumbers ? $"; {PairTexts.Change(pair)}"
            : ""
        );

    /// <summary>"34.7, 0:24".</summary>
    private static string Measured(Measurement? measurement) =>
        measurement is null ? ""
        : measurement.Delay is { } delay ? $"{measurement.Result.Text}, {PairTexts.Clock(delay)}"
        : measurement.Result.Text;
}
