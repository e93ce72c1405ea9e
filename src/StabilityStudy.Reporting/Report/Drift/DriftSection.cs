using System.Diagnostics;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>How results drift with time: description, never a decision.</summary>
internal static class DriftSection
{
    private const double FigureHeight = 66;
    private const int Decimals = 2;
    private const string NotTested = "–";

    public const string Title = "Drift with time";

    public static Section Of(StudyAnalysis study)
    {
        // Classes have no drift.
        var analysis = study with
        {
            Sequences =
            [
                .. study.Sequences.Where(sequence =>
                    !SequenceNames.Of(study, sequence).Analyte.IsQualitative
                ),
            ],
        };
        return analysis.Sequences.IsEmpty && !study.Sequences.IsEmpty
            ? new Section(
                Title,
                StartsOnNewPage: false,
                [
                    new Paragraph(
                        "The results are classes, so no drift is fitted.",
                        ParagraphStyle.Body
                    ),
                ]
            )
            : OfNumbers(analysis);
    }

    private static Section OfNumbers(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Each specimen is its own control: its slope is fitted through its own baseline at the actual baseline delay, and the mean of the slopes is shown with one-sided 95 % bounds that span both those by specimens and those by collection days: from the lower of the two lower ends to the higher of the two upper ends. The shape of change is that of the protocol. This fit describes; nothing is said beyond the longest delay tested.",
                    ParagraphStyle.Body
                ),
                Slopes(analysis),
                MixedDriftTable.Of(analysis),
                .. DriftRemarks.Of(analysis) is { IsEmpty: false } remarks
                    ? [new Bullets(remarks)]
                    : ImmutableArray<Block>.Empty,
                Context(analysis),
                .. Figures(analysis),
            ]
        );

    /// <summary>The groups and storages of an analyte share one scale, so that their figures can be compared.</summary>
    private static IEnumerable<Block> Figures(StudyAnalysis analysis) =>
        from sequence in analysis.Sequences
        let axis = DriftFigure.ChangeAxis(
            analysis.Sequences.Where(other => other.Analyte == sequence.Analyte)
        )
        select DriftFigure.Of(analysis, sequence, axis, FigureHeight);

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
                new Column("Modeled before the baseline, %", ColumnAlignment.Left, 1.9),
                new Column("Bound leaves the limit", ColumnAlignment.Left, 2.4),
            ],
            [.. analysis.Sequences.Select(sequence => Row(analysis, sequence))],
            "Fitted change from the mean baseline delay, with one-sided 95 % bounds. –: not tested or not assessed. Modeled before the baseline: the change from collection to the mean baseline delay that the shape implies; nobody measured it, and it is in no other figure."
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
                new TableCell(""),
                new TableCell(RefusalWords.Sentence(sequence.Drift.Estimate)),
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
            FittedAt(DriftPrediction.FromCollectionToBaseline(drift)),
            new TableCell(Crossing(sequence, drift)),
        ]);
    }

    private static bool IsTested(Sequence sequence, TimePoint timePoint) =>
        sequence.Cells.Any(cell =>
            cell.Key.TimePoint == timePoint
            && cell.Estimates.Compared > 0
            && cell.Conclusion != Conclusion.NotAssessed
        );

    private static TableCell FittedAt(DriftPoint point) =>
        new(
            $"{NumberText.Change(point.Change, Decimals)} ({NumberText.Interval(point.LowerBound, point.UpperBound, Decimals)})"
        );

    private static string Crossing(Sequence sequence, DriftEstimate drift)
    {
        var longest = LongestDelay.Of(sequence);
        return sequence.Drift.Crossing switch
        {
            null => "no limit in percent",
            _ when !sequence.Drift.Misfits.IsEmpty => DriftRemarks.NoTime,
            CrossingTime.AlreadyOutside => "from the baseline on",
            CrossingTime.At at when at.Hours <= longest =>
                $"at {DurationText.FormatComputed(at.Hours)} from collection",
            CrossingTime.At or CrossingTime.Never =>
                $"not within {DurationText.FormatComputed(longest)}, the longest actual delay",
            _ => throw new UnreachableException(),
        };
    }

    private static Paragraph Context(StudyAnalysis analysis)
    {
        var published = (
            from sequence in analysis.Sequences
            let names = SequenceNames.Of(analysis, sequence)
            let drift = PublishedDrift.For(names)
            where drift is not null
            group names.Group.Name by drift into groups
            select (Drift: groups.Key, Groups: groups.Distinct())
        ).ToImmutableArray();
        var finds = published.Select(item =>
            $"{item.Drift.Says} (group {string.Join(", ", item.Groups)})"
        );
        return new Paragraph(
            published.IsEmpty
                ? "No published curve is shown for these analytes and patient groups."
                : $"For comparison only, and not for heparin or any other anticoagulant: {PublishedDrift.Source} finds {string.Join("; ", finds)}. Its curve is drawn from the mean baseline delay on, as this study's is.",
            ParagraphStyle.Small
        );
    }
}
