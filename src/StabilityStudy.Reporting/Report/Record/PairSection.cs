using StabilityStudy.Reporting.Report.Figures;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every pair, with the line of the facility's own file, so that any figure can be recomputed.</summary>
internal static class PairSection
{
    public const string Title = "Every pair";

    /// <summary>Beyond this number the pairs are in the attached files only, and the report says so.</summary>
    private const int MostPairs = 2000;

    public static Section Of(StudyAnalysis analysis)
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
                : [.. analysis.Sequences.Select(sequence => TableOf(analysis, sequence))]
        );
    }

    private static Table TableOf(StudyAnalysis analysis, Sequence sequence)
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
                    .Select(item => Row(item.Cell, item.Pair, spun)),
            ],
            $"Tested after: actual delay since collection, in hours:minutes. Before, after spinning: the delayed tube from collection to spinning and from spinning to its test. Lines: of the baseline and of the delayed result in the laboratory's own file {analysis.Facts.Files.Results}; the attached results.csv, which the program wrote from it in an order of its own, names the same lines in its column source_row. Outside: counts as outside the allowable difference. Not tested: with a stated reason, left out, no failure. Outlier: flagged, kept in every figure. Across: changed the side of that decision level."
        );
    }

    private static Row Row(Cell cell, PairRecord pair, bool spun)
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
            new TableCell(Delay(pair.Baseline), emphasis),
            new TableCell(pair.Delayed?.Result.Text ?? "", emphasis),
            new TableCell(Delay(pair.Delayed), emphasis),
            .. spun ? [new TableCell(Spinning(pair), emphasis)] : ImmutableArray<TableCell>.Empty,
            new TableCell(pair.IsOfNumbers ? Change(pair) : "", emphasis),
            new TableCell(
                pair.IsOfNumbers && pair.ChangePercent is not null ? Percent(pair) : "",
                emphasis
            ),
            new TableCell(
                string.Join(
                    ", ",
                    new[] { pair.Baseline, pair.Delayed }
                        .Select(measurement => measurement?.SourceRow)
                        .OfType<int>()
                        .Select(NumberText.Count)
                ),
                emphasis
            ),
            new TableCell(Remark(cell, pair), emphasis),
        ]);
    }

    private static string Change(PairRecord pair)
    {
        var (baseline, delayed) = pair.Values();
        var change = delayed - baseline;
        return (change > 0 ? "+" : "")
            + change.ToString(CultureInfo.InvariantCulture).Replace('-', '\u2212');
    }

    /// <summary>In decimal figures, so that a half is rounded as with a calculator.</summary>
    private static string Percent(PairRecord pair)
    {
        var (baseline, delayed) = pair.Values();
        var percent = 100 * (delayed - baseline) / baseline;
        return NumberText.Change(
            (double)decimal.Round(percent, 1, MidpointRounding.AwayFromZero),
            1
        );
    }

    private static string Spinning(PairRecord pair) =>
        string.Join(
            ", ",
            new[] { pair.TimeBeforeSpinning, pair.TimeAfterSpinning }
                .OfType<TimeSpan>()
                .Select(Clock)
        );

    private static string Delay(Measurement? measurement) =>
        measurement?.Delay is { } delay ? Clock(delay) : "";

    /// <summary>Hours and minutes, "12:05"; from three days on with the days, "14 d 2:05", held on one line.</summary>
    private static string Clock(TimeSpan delay)
    {
        var minutes = (long)Math.Floor(delay.TotalMinutes);
        var days = minutes > 72 * 60 ? minutes / 1440 : 0;
        var rest = minutes - (days * 1440);
        var clock = string.Create(CultureInfo.InvariantCulture, $"{rest / 60}:{rest % 60:00}");
        return days == 0
            ? clock
            : string.Create(CultureInfo.InvariantCulture, $"{days}\u00A0d\u00A0{clock}");
    }

    private static string Remark(Cell cell, PairRecord pair)
    {
        if (pair.Status != PairStatus.Compared)
        {
            return TradeWords.Short(pair);
        }

        string[] remarks =
        [
            .. CellAxes.IsOutside(cell, pair) ? ["outside"] : Array.Empty<string>(),
            .. pair.IsOutlier ? ["outlier"] : Array.Empty<string>(),
            .. cell
                .SideChanges.Where(change =>
                    change.Up.Contains(pair.Specimen) || change.Down.Contains(pair.Specimen)
                )
                .Select(change => $"across {NumberText.Plain(change.Level)}"),
        ];
        return string.Join("; ", remarks);
    }
}
