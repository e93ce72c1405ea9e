namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>The conclusions of a study with many sequences at one look: a row a sequence, a column a time point.</summary>
internal static class DecisionMatrix
{
    /// <summary>Space at which no line ends.</summary>
    private const char Unbroken = '\u00A0';

    public static Table Of(StudyAnalysis analysis)
    {
        var timePoints = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .Select(cell => cell.Key.TimePoint)
            .Distinct()
            .OrderBy(timePoint => timePoint.Delay)
            .ToImmutableArray();
        return new Table(
            "Conclusions by analyte, patient group and time point",
            [
                new Column("Analyte, group", ColumnAlignment.Left, 1.35),
                new Column("Today", ColumnAlignment.Left, 0.6),
                new Column("Supported to", ColumnAlignment.Left, 1.4),
                new Column("Baselines", ColumnAlignment.Left, 1.8),
                .. timePoints.Select(timePoint => new Column(
                    timePoint.ToString(),
                    ColumnAlignment.Left,
                    1.45
                )),
            ],
            [.. analysis.Sequences.Select(sequence => Row(analysis, sequence, timePoints))],
            $"Empty: not asked. {OriginWords.InBrief(analysis)}{ShareInWords.WithNames(analysis)} Baselines: the results studied; nothing is shown beyond. Mod.: beyond the manufacturer's limit, so a modified test.{Unstated(analysis)} Groups: {Groups(analysis)}. Analytes: {Analytes(analysis)}."
        );
    }

    private static string Unstated(StudyAnalysis analysis)
    {
        string[] silent =
        [
            .. analysis
                .Protocol.Analytes.Where(analyte => analyte.ManufacturerLimit is null)
                .Select(analyte => analyte.Id),
        ];
        return silent.Length == 0
            ? ""
            : $" No manufacturer's limit is stated for {string.Join(", ", silent)}: there too it may be one.";
    }

    private static string Groups(StudyAnalysis analysis) =>
        Meanings(
            analysis.Protocol.Groups.Select(group => (group.Id, group.Name)),
            analysis.Sequences.Select(sequence => sequence.Group)
        );

    private static string Analytes(StudyAnalysis analysis) =>
        Meanings(
            analysis.Protocol.Analytes.Select(analyte => (analyte.Id, analyte.Name)),
            analysis.Sequences.Select(sequence => sequence.Analyte)
        );

    /// <summary>"none = No anticoagulant, vka = …" for the codes that the table holds.</summary>
    private static string Meanings(
        IEnumerable<(string Code, string Name)> all,
        IEnumerable<string> shown
    ) =>
        string.Join(
            ", ",
            all.IntersectBy(shown, item => item.Code).Select(item => $"{item.Code} = {item.Name}")
        );

    private static Row Row(
        StudyAnalysis analysis,
        Sequence sequence,
        ImmutableArray<TimePoint> timePoints
    )
    {
        var names = SequenceNames.Of(analysis, sequence);
        return new Row([
            new TableCell(names.Code(analysis)),
            new TableCell(DurationText.Format(names.Analyte.StandardWindowOf(names.Group.Id).Time)),
            new TableCell(Window(sequence), Emphasis.Strong),
            new TableCell(StudiedRange.Of(sequence, names) ?? ""),
            .. timePoints.Select(timePoint =>
                sequence.Cells.FirstOrDefault(cell => cell.Key.TimePoint == timePoint) is { } cell
                    ? new TableCell(
                        TradeWords.Of(cell.Conclusion).Replace(' ', Unbroken),
                        Emphasis.None,
                        TradeWords.ShapeOf(cell.Conclusion)
                    )
                    : new TableCell("")
            ),
        ]);
    }

    private static string Window(Sequence sequence) =>
        sequence.Window switch
        {
            null => "none",
            { ManufacturerLimit: ManufacturerStanding.Beyond } window =>
                $"{DurationText.FormatWindow(window.Time)} mod.",
            { } window => DurationText.FormatWindow(window.Time),
        };
}
