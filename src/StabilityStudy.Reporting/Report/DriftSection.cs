using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Drift;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report;

/// <summary>How results drift with time: description, never a decision.</summary>
internal static class DriftSection
{
    private const double FigureHeight = 66;
    private const int Decimals = 2;

    public static Section Of(StudyAnalysis analysis)
    {
        var axis = analysis.Sequences.IsEmpty ? null : DriftFigure.ChangeAxis(analysis.Sequences);
        return new Section(
            "Drift with time",
            StartsOnNewPage: true,
            [
                new Paragraph(
                    "Each specimen is its own control: its slope is fitted through its own baseline at the actual baseline delay, and the mean of the slopes is shown with one-sided 95 % bounds, the wider of those by specimens and by collection days. The shape of change was declared in the protocol. Drift describes; it decides nothing, and nothing is said beyond the longest delay tested.",
                    ParagraphStyle.Body
                ),
                Slopes(analysis),
                .. axis is null
                    ? []
                    : analysis.Sequences.Select(sequence =>
                        (Block)DriftFigure.Of(analysis, sequence, axis, FigureHeight)
                    ),
                Context(analysis),
            ]
        );
    }

    private static Table Slopes(StudyAnalysis analysis) =>
        new(
            "Mean change with time",
            [
                new Column("Group", ColumnAlignment.Left, 2.2),
                new Column("Shape", ColumnAlignment.Left, 1.4),
                new Column("Specimens", ColumnAlignment.Right, 1),
                .. analysis.Protocol.TimePoints.Select(timePoint => new Column(
                    $"Fitted at {timePoint}, %",
                    ColumnAlignment.Left,
                    1.9
                )),
                new Column("Bound leaves the limit", ColumnAlignment.Left, 2),
            ],
            [.. analysis.Sequences.Select(sequence => Row(analysis, sequence))],
            "Fitted change from the mean baseline delay, with one-sided 95 % bounds. The time at which the bound leaves the limit counts from collection."
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
                new TableCell(sequence.Drift.Estimate.NotComputable?.Reason ?? ""),
            ]);
        }

        return new Row([
            new TableCell(names.Title(analysis)),
            new TableCell(TradeWords.Of(drift.Shape)),
            new TableCell(NumberText.Count(drift.SpecimenCount)),
            .. points.Select(timePoint =>
                FittedAt(DriftPrediction.At(drift, timePoint.Delay.TotalHours))
            ),
            new TableCell(Crossing(sequence.Drift, analysis)),
        ]);
    }

    private static TableCell FittedAt(DriftPoint point) =>
        new(
            $"{NumberText.Change(point.Change, Decimals)} ({NumberText.Interval(point.LowerBound, point.UpperBound, Decimals)})"
        );

    private static string Crossing(DriftResult drift, StudyAnalysis analysis) =>
        drift.Crossing switch
        {
            null => "no limit in percent",
            CrossingTime.AlreadyOutside => "from the baseline on",
            CrossingTime.At at when at.Hours <= analysis.Protocol.TimePoints[^1].Delay.TotalHours =>
                $"at {NumberText.Fixed(at.Hours, 1)} h",
            _ => $"not within {analysis.Protocol.TimePoints[^1]}",
        };

    private static Paragraph Context(StudyAnalysis analysis) =>
        new(
            analysis.Protocol.Analytes.Any(analyte =>
                analyte.Id.Equals("aPTT", StringComparison.OrdinalIgnoreCase)
            )
                ? "For comparison only: a 2025 consensus of 43 published studies of unfrozen specimens (Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117) finds the aPTT prolonged by 6.1 % at 6 h and 10 % at 24 h, rising with the logarithm of time."
                : "No published curve is shown for these analytes.",
            ParagraphStyle.Small
        );
}
