namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every pair of a sequence with the lines of the laboratory's own file, for a full report.</summary>
internal static class PairTable
{
    public static Table Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var spun = sequence
            .Cells.SelectMany(cell => cell.Pairs)
            .Any(pair => pair.TimeBeforeSpinning is not null);
        return new Table(
            names.Analyte.IsQualitative
                ? $"{names.Title(analysis)}: classes"
                : $"{names.Title(analysis)}: results in {names.Analyte.ShownUnit}",
            [
                new Column("Specimen", ColumnAlignment.Left, 1.2),
                new Column("Collected", ColumnAlignment.Left, 1.3),
                new Column("Time", ColumnAlignment.Left, 0.7),
                new Column("Baseline", ColumnAlignment.DecimalPoint, 1),
                new Column("Tested after", ColumnAlignment.Right, 0.9),
                new Column("Delayed", ColumnAlignment.DecimalPoint, 1),
                new Column("Tested after", ColumnAlignment.Right, 1),
                .. spun
                    ? [new Column("Before, after spinning", ColumnAlignment.Left, 1.6)]
                    : ImmutableArray<Column>.Empty,
                new Column("Change", ColumnAlignment.DecimalPoint, 0.9),
                new Column("Change, %", ColumnAlignment.DecimalPoint, 1),
                new Column("Lines", ColumnAlignment.Left, 1.2),
                new Column("Remark", ColumnAlignment.Left, spun ? 2 : 2.5),
            ],
            [
                .. sequence
                    .Cells.SelectMany(cell => cell.Pairs.Select(pair => (Cell: cell, Pair: pair)))
                    .OrderBy(item => item.Pair.Specimen, StringComparer.Ordinal)
                    .ThenBy(item => item.Cell.Key.TimePoint.Delay)
                    .Select(item => Row(names, names.Title(analysis), item.Cell, item.Pair, spun)),
            ],
            $"Tested after: actual delay since {OriginWords.Start(analysis.Protocol.TimeOrigin)}, in hours:minutes. Before, after spinning: the delayed tube from collection to spinning and from spinning to its test. Lines: of the baseline and of the delayed result in the laboratory's own file {analysis.Facts.Files.Results}; the attached results.csv, which the program wrote from it in an order of its own, names the same lines in its column source_row{SourceLines.Further(analysis)}. Outside: counts as outside the allowable difference. Not tested: with a stated reason, left out, no failure. Stands out: flagged, kept in every figure. Across: changed the side of that decision level."
        );
    }

    private static Row Row(SequenceNames names, string title, Cell cell, PairRecord pair, bool spun)
    {
        var compared = pair.Status == PairStatus.Compared;
        var emphasis = compared ? Emphasis.None : Emphasis.Muted;
        return new Row([
            new TableCell(pair.Specimen, emphasis),
            new TableCell(
                pair.CollectionDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                emphasis
            ),
            new TableCell(cell.Key.TimePoint.ToString(), emphasis),
            new TableCell(pair.Baseline?.Result.Text ?? "", emphasis),
            new TableCell(PairTexts.Delay(pair.Baseline), emphasis),
            new TableCell(pair.Delayed?.Result.Text ?? "", emphasis),
            new TableCell(PairTexts.Delay(pair.Delayed), emphasis),
            .. spun
                ? [new TableCell(PairTexts.Spinning(pair), emphasis)]
                : ImmutableArray<TableCell>.Empty,
            new TableCell(pair.IsOfNumbers ? PairTexts.Change(pair) : "", emphasis),
            new TableCell(
                pair.IsOfNumbers && pair.ChangePercent is not null ? PairTexts.Percent(pair) : "",
                emphasis
            ),
            new TableCell(
                string.Join(
                    ", ",
                    new[] { pair.Baseline, pair.Delayed }
                        .Select(measurement => measurement?.SourceRow)
                        .OfType<int>()
                        .Select(SourceLines.Words)
                ),
                emphasis
            ),
            new TableCell(PairTexts.Remark(cell, pair), emphasis),
        ])
        {
            ResultsOf = new SpecimenResults(pair.Specimen, names.Analyte.Id, title),
        };
    }
}
