using System.Diagnostics;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>How results drift with time: description, never a decision.</summary>
internal static class DriftSection
{
    private const double FigureHeight = 63;

    /// <summary>One alone is wider than high.</summary>
    private const double WideHeight = 48;
    private const int MostFiguresAcross = 2;

    public const string Title = "Drift with time";

    /// <summary>The section.</summary>
    /// <param name="study">What the data say.</param>
    /// <param name="full">Whether also the one curve is drawn that the figure of page 1 shows.</param>
    public static Section Of(StudyAnalysis study, bool full)
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
            : OfNumbers(analysis, full);
    }

    private static Section OfNumbers(StudyAnalysis analysis, bool full) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"Drift describes; the criteria decide. Each specimen is its own control: a slope through its own baseline, in the shape that the protocol states. Nothing is claimed beyond the longest delay tested. Figures of the fits: \"{EstimateSection.Title}\".",
                    ParagraphStyle.Body
                ),
                Crossings(analysis),
                .. DriftRemarks.Of(analysis) is { IsEmpty: false } remarks
                    ? [new Bullets(remarks)]
                    : ImmutableArray<Block>.Empty,
                Context(analysis),
                .. Figures(analysis, full),
            ]
        );

    /// <summary>The groups and storages of an analyte share one scale, so that their figures can be compared.</summary>
    public static ImmutableArray<ChartBlock> Charts(StudyAnalysis analysis) =>
        [
            .. from sequence in analysis.Sequences
            let axis = DriftFigure.ChangeAxis(
                analysis.Sequences.Where(other => other.Analyte == sequence.Analyte)
            )
            select DriftFigure.Of(
                analysis,
                sequence,
                axis,
                analysis.Sequences.Length == 1 ? WideHeight : FigureHeight
            ),
        ];

    private static IEnumerable<Block> Figures(StudyAnalysis analysis, bool full)
    {
        var figures = Charts(analysis);
        if (!full && figures.Length == 1 && FirstPageFigure.HasCurves(analysis))
        {
            return [new Paragraph("Figure 1 shows the curve.", ParagraphStyle.Small)];
        }

        return FigureRows.Captioned(
            analysis.Sequences.Length <= MostFiguresAcross
                ? string.Join(
                    " ",
                    analysis.Sequences.Select(sequence => Finding(analysis, sequence))
                )
                : "Drift of each analyte and group.",
            FigureRows.KeyOf(figures),
            figures,
            MostFiguresAcross
        );
    }

    /// <summary>"No anticoagulant: a bound leaves the limit at 5.8 h from collection."</summary>
    private static string Finding(StudyAnalysis analysis, Sequence sequence) =>
        $"{SequenceNames.Of(analysis, sequence).Title(analysis)}: "
        + (
            sequence.Drift.Estimate.Value is null ? "no curve is fitted."
            : sequence.Drift.Crossing is CrossingTime.At
                ? $"a bound leaves the limit {Crossing(analysis, sequence)}."
            : $"the limit is not reached: {Crossing(analysis, sequence)}."
        );

    private static Table Crossings(StudyAnalysis analysis) =>
        new(
            "When a bound of the drift first leaves the limit, by the course assumed",
            [
                new Column("Group", ColumnAlignment.Left, 2.6),
                new Column("Course in the protocol", ColumnAlignment.Left, 1.4),
                new Column("Each specimen's own slope", ColumnAlignment.Left, 2.1),
                new Column("Mixed model, same course", ColumnAlignment.Left, 2.1),
                new Column("Course that follows best (AICc)", ColumnAlignment.Left, 1.7),
                new Column("Modeled before the baseline, %", ColumnAlignment.Left, 2),
            ],
            [.. analysis.Sequences.Select(sequence => Row(analysis, sequence))],
            $"Times count from {OriginWords.Start(analysis.Protocol.TimeOrigin)}. Modeled before the baseline: the change from {OriginWords.Start(analysis.Protocol.TimeOrigin)} to the mean baseline delay that the course implies; nobody measured it, and it is in no other figure."
        );

    private static Row Row(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var declared = sequence.Drift.Mixed.FirstOrDefault(mixed => mixed.IsDeclared);
        var best = sequence
            .Drift.Mixed.Where(mixed => mixed.Fit.Value?.CorrectedInformation is not null)
            .MinBy(mixed => mixed.Fit.Value!.CorrectedInformation);
        var drift = sequence.Drift.Estimate.Value;
        return new Row([
            new TableCell(names.Title(analysis)),
            new TableCell(TradeWords.CourseOf(names.Analyte.DriftShape)),
            new TableCell(
                drift is null
                    ? RefusalWords.Sentence(sequence.Drift.Estimate)
                    : Crossing(analysis, sequence)
            ),
            new TableCell(
                declared?.Fit.Value is null ? "not computable"
                : sequence.Drift.Misfits.IsEmpty
                    ? MixedDriftTable.Crossing(declared.Crossing, LongestDelay.Of(sequence))
                : DriftRemarks.NoTime
            ),
            new TableCell(
                best is null ? "–"
                    : best.IsDeclared ? "the same"
                    : TradeWords.CourseOf(best.Shape),
                best is null or { IsDeclared: true } ? Emphasis.None : Emphasis.Strong
            ),
            drift is null
                ? new TableCell("")
                : FittedDriftTable.FittedAt(DriftPrediction.FromCollectionToBaseline(drift)),
        ]);
    }

    private static string Crossing(StudyAnalysis analysis, Sequence sequence)
    {
        var longest = LongestDelay.Of(sequence);
        return sequence.Drift.Crossing switch
        {
            null => "no limit in percent",
            _ when !sequence.Drift.Misfits.IsEmpty => DriftRemarks.NoTime,
            CrossingTime.AlreadyOutside => "from the baseline on",
            CrossingTime.At at when at.Hours <= longest =>
                $"at {DurationText.FormatComputed(at.Hours)} from {OriginWords.Start(analysis.Protocol.TimeOrigin)}",
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
                : $"For comparison only, and not for heparin or any other anticoagulant: {PublishedDrift.Source} finds {string.Join("; ", finds)}.",
            ParagraphStyle.Small
        );
    }
}
