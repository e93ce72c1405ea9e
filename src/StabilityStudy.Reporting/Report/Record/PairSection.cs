namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every specimen with its results, so that any figure can be recomputed.</summary>
internal static class PairSection
{
    public const string Title = "Every specimen";

    /// <summary>Beyond this number the results are in the attached files only, and the report says so.</summary>
    private const int MostPairs = 2000;

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
        var isFrozen = ShowsPortions(cells);
        Row[] rows =
        [
            .. cells
                .SelectMany(cell => cell.Pairs)
                .GroupBy(pair => pair.Specimen)
                .OrderBy(pairs => pairs.Key, StringComparer.Ordinal)
                .Select(pairs => Row(cells, [.. pairs], isFrozen)),
        ];
        // One time point leaves room for two specimens side by side, read down the left half first.
        var across = cells.Length == 1 ? 2 : 1;
        var height = (rows.Length + across - 1) / across;
        return new Table(
            names.Analyte.IsQualitative
                ? $"{names.Title(analysis)}: classes"
                : $"{names.Title(analysis)}: results in {names.Analyte.ShownUnit}",
            [.. Enumerable.Repeat(Columns(cells), across).SelectMany(columns => columns)],
            [
                .. Enumerable
                    .Range(0, height)
                    .Select(row => new Row([
                        .. Enumerable
                            .Range(0, across)
                            .SelectMany(column =>
                                row + (column * height) < rows.Length
                                    ? rows[row + (column * height)].Cells
                                    : [.. Columns(cells).Select(_ => new TableCell(""))]
                            ),
                    ])),
            ],
            $"After: actual delay since {OriginWords.Start(analysis.Protocol.TimeOrigin)}, in hours:minutes. Change in percent of the baseline. Outside: counts as outside the allowable difference in the reading that decides; the change is as measured. Stands out: flagged, kept in every figure. Across: changed the side of that decision level. Tubes, runs, instruments, lots, persons, spinning and the lines of the laboratory's own files stand in the attached results.csv and specimens.csv."
                + (
                    isFrozen
                        ? " Not frozen: minutes of each delayed portion from collection to freezing, and from thawing to its test, in the order of the time points."
                        : ""
                )
        );
    }

    /// <summary>Whether there are times of frozen portions, and room for them.</summary>
    private static bool ShowsPortions(ImmutableArray<Cell> cells) =>
        cells.Length is 2 or 3
        && cells.SelectMany(cell => cell.Pairs).Any(pair => pair.Frozen is not null);

    private static ImmutableArray<Column> Columns(ImmutableArray<Cell> cells) =>
        [
            new Column("Specimen", ColumnAlignment.Left, 0.9),
            new Column("Collected", ColumnAlignment.Left, 1.1),
            new Column("Baseline, after", ColumnAlignment.Left, 1.2),
            .. cells.Select(cell => new Column(
                $"{cell.Key.TimePoint}: delayed, after; change",
                ColumnAlignment.Left,
                cells.Length == 1 ? 2.3 : 2
            )),
            .. ShowsPortions(cells)
                ? [new Column("Not frozen, min", ColumnAlignment.Left, 0.75 * cells.Length)]
                : ImmutableArray<Column>.Empty,
            new Column(
                "Remark",
                ColumnAlignment.Left,
                cells.Length == 1 ? 0.8
                    : ShowsPortions(cells) ? 3.6 - (0.75 * cells.Length)
                    : 3.6
            ),
        ];

    private static Row Row(
        ImmutableArray<Cell> cells,
        ImmutableArray<PairRecord> pairs,
        bool isFrozen
    )
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
            select $"{InBrief([.. times])} {times.Key}",
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
            .. isFrozen
                ? [new TableCell(string.Join("; ", pairs.Select(Portion)))]
                : ImmutableArray<TableCell>.Empty,
            new TableCell(string.Join("; ", remarks)),
        ]);
    }

    /// <summary>"53, 8"; a dash where it is not known.</summary>
    private static string Portion(PairRecord pair) =>
        pair.Frozen is { } times
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{Math.Floor(times.BeforeFreezing.TotalMinutes)}, {Math.Floor(times.AfterThawing.TotalMinutes)}"
            )
            : "–";

    /// <summary>"2, 4, 6 h" where all are in one unit.</summary>
    private static string InBrief(ImmutableArray<TimePoint> times)
    {
        string[][] parts = [.. times.Select(time => time.ToString().Split(' '))];
        return
            parts.All(part => part.Length == 2)
            && parts.Select(part => part[1]).Distinct(StringComparer.Ordinal).Count() == 1
            ? $"{string.Join(", ", parts.Select(part => part[0]))} {parts[0][1]}"
            : string.Join(", ", times);
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
