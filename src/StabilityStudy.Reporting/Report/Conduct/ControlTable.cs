using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>What the control results say about the runs of every time point, a row each.</summary>
internal static class ControlTable
{
    private const int Decimals = 2;

    /// <summary>The table; null where the protocol keeps its controls elsewhere.</summary>
    public static Table? Of(StudyAnalysis analysis)
    {
        var rows = analysis
            .Sequences.SelectMany(sequence => Rows(analysis, sequence))
            .ToImmutableArray();
        return rows.IsEmpty
            ? null
            : new Table(
                "Controls of the runs in which the pairs were tested",
                [
                    new Column("Time", ColumnAlignment.Left, 0.7),
                    new Column("Runs", ColumnAlignment.Right, 0.7),
                    new Column("In control", ColumnAlignment.Right, 0.9),
                    new Column("Without a control", ColumnAlignment.Left, 1.6),
                    new Column("With a control outside its range", ColumnAlignment.Left, 1.9),
                    new Column(
                        "Shift of the bridging plasma (interval)",
                        ColumnAlignment.Left,
                        2.6
                    ),
                    new Column("Plasmas; results", ColumnAlignment.Left, 1.5),
                ],
                rows,
                Note(analysis)
            );
    }

    private static ImmutableArray<Row> Rows(StudyAnalysis analysis, Sequence sequence)
    {
        var rows = sequence
            .Cells.Where(cell => cell.Controls is not null)
            .Select(cell => Row(cell.Key.TimePoint.ToString(), cell.Controls!))
            .ToImmutableArray();
        return rows.IsEmpty
            ? rows
            : rows.Insert(
                0,
                new Row(
                    [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
                    RowKind.GroupHeading
                )
            );
    }

    private static Row Row(string time, ControlEvidence controls) =>
        new([
            new TableCell(time),
            new TableCell(NumberText.Count(controls.Runs)),
            new TableCell(NumberText.Count(controls.RunsInControl), Emphasis.Strong),
            new TableCell(Listed(controls.RunsWithoutControl)),
            new TableCell(Listed(controls.RunsOutOfControl)),
            new TableCell(Shift(controls.Bridging)),
            new TableCell(Behind(controls.Bridging)),
        ]);

    private static string? Note(StudyAnalysis analysis)
    {
        var levels = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .Select(cell => cell.Controls?.Bridging?.MeanPercent.Value?.ConfidenceLevel)
            .OfType<double>()
            .Distinct()
            .Order()
            .Select(NumberText.Percent)
            .ToImmutableArray();
        return levels.IsEmpty
            ? null
            : $"Bridging plasma: the same stable plasma tested in runs of baselines and in runs of delayed tubes. Its shift, with the {string.Join(" or ", levels)} interval, is what the runs, not the delay, add to the change. Conclusions follow from the less favorable reading, as measured or corrected by it. Results: in runs of baselines + in runs of delayed tubes.";
    }

    private static string Listed(IReadOnlyCollection<string> runs) =>
        runs.Count == 0 ? "none" : string.Join(", ", runs);

    private static string Shift(BridgingShift? bridging) =>
        bridging is null ? "no bridging plasma tested"
        : bridging.MeanPercent.TryGet(out MeanInterval? mean)
            ? $"{NumberText.Change(mean.Mean, Decimals)} ({NumberText.Interval(mean.Lower, mean.Upper, Decimals)}) %"
        : "not computable: " + RefusalWords.Sentence(bridging.MeanPercent);

    private static string Behind(BridgingShift? bridging) =>
        bridging is null
            ? ""
            : $"{NumberText.Count(bridging.Plasmas)}; {NumberText.Count(bridging.BaselineResults)} + {NumberText.Count(bridging.DelayedResults)}";
}
