using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>The fitted drift at each time point.</summary>
internal static class FittedDriftTable
{
    private const int Decimals = 2;
    private const string NotTested = "–";

    /// <summary>The table, a row a group.</summary>
    public static Table Of(StudyAnalysis analysis) =>
        new(
            "Drift by each specimen's own slope",
            [
                new Column("Group", ColumnAlignment.Left, 2.2),
                new Column("Shape", ColumnAlignment.Left, 1.4),
                new Column("Specimens", ColumnAlignment.Right, 1),
                .. analysis.Protocol.TimePoints.Select(timePoint => new Column(
                    $"Fitted at {timePoint}, %",
                    ColumnAlignment.Left,
                    1.9
                )),
            ],
            [
                .. analysis
                    .Sequences.Where(sequence =>
                        !SequenceNames.Of(analysis, sequence).Analyte.IsQualitative
                    )
                    .Select(sequence => Row(analysis, sequence)),
            ],
            "Mean of the specimens' own slopes: change from the mean baseline delay, with one-sided 95 % bounds that span specimens and collection days. –: not tested or not assessed."
        );

    private static Row Row(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var points = analysis.Protocol.TimePoints;
        if (!sequence.Drift.Estimate.TryGet(out var drift))
        {
            return new Row([
                new TableCell(names.Title(analysis)),
                new TableCell(TradeWords.Of(names.Analyte.DriftShape)),
                new TableCell(""),
                .. points.Select(_ => new TableCell("not computable")),
            ]);
        }

        return new Row([
            new TableCell(names.Title(analysis)),
            new TableCell(TradeWords.Of(drift.Shape)),
            new TableCell(NumberText.Count(drift.SpecimenCount)),
            .. points.Select(timePoint =>
                IsTested(sequence, timePoint)
                    ? FittedAt(DriftPrediction.At(drift, timePoint.Delay.TotalHours))
                    : new TableCell(NotTested)
            ),
        ]);
    }

    private static bool IsTested(Sequence sequence, TimePoint timePoint) =>
        sequence.Cells.Any(cell =>
            cell.Key.TimePoint == timePoint
            && cell.Estimates.Compared > 0
            && cell.Conclusion != Conclusion.NotAssessed
        );

    /// <summary>"+5.88 (+4.79 to +7.66)".</summary>
    public static TableCell FittedAt(DriftPoint point) =>
        new(
            $"{NumberText.Change(point.Change, Decimals)} ({NumberText.Interval(point.LowerBound, point.UpperBound, Decimals)})"
        );
}
