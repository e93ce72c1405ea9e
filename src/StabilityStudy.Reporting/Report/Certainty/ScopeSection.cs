using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>Each instrument of a study over several, on its own specimens.</summary>
internal static class ScopeSection
{
    /// <summary>The section; null where nothing was tested on several.</summary>
    public static Section? Of(StudyAnalysis analysis)
    {
        var over = analysis.Sequences.Where(sequence => !sequence.Parts.IsEmpty).ToImmutableArray();
        if (over.IsEmpty)
        {
            return null;
        }

        return new(
            "Each instrument on its own specimens",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "A specimen belongs to the instrument of its baseline. A window holds for all only where each instrument supports it by every criterion on its own specimens, since a mean over all could hide one that changes more. Where they differ, the window of one instrument holds for that instrument alone.",
                    ParagraphStyle.Body
                ),
                .. over.Select(sequence => Table(analysis, sequence)),
            ]
        );
    }

    private static Table Table(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        return new(
            $"{names.Title(analysis)}, by instrument",
            [
                new Column("Time", ColumnAlignment.Left, 0.65),
                new Column("Counted", ColumnAlignment.Left, 1.1),
                new Column("Mean change (interval)", ColumnAlignment.Left, 3.1),
                new Column("Within limit (bound)", ColumnAlignment.Left, 2.3),
                new Column("Conclusion", ColumnAlignment.Left, 1.6),
            ],
            [.. sequence.Parts.SelectMany(part => Rows(part, names, analysis.Protocol))],
            Differences(sequence)
        );
    }

    private static IEnumerable<Row> Rows(
        ScopePart part,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        yield return new(
            [
                new TableCell(
                    $"{TradeWords.Capital(ScopeWords.Of(part.Code))} · supported window: {ScopeWords.Window(part)}"
                ),
            ],
            RowKind.GroupHeading
        );
        foreach (var item in part.TimePoints)
        {
            var figures = item
                .Criteria.SelectMany(result =>
                    CriterionWords.Of(result, names, protocol).Figures(withLimits: false)
                )
                .ToLookup(figure => figure.IsShare, figure => figure.Found);
            yield return new([
                new TableCell(item.TimePoint.ToString()),
                new TableCell(
                    $"{NumberText.Count(item.Counted)} of {NumberText.Count(item.Received)}"
                ),
                new TableCell(string.Join("; ", figures[false])),
                new TableCell(string.Join("; ", figures[true])),
                new TableCell(
                    TradeWords.Of(item.Conclusion),
                    Emphasis.Strong,
                    TradeWords.ShapeOf(item.Conclusion)
                ),
            ]);
        }
    }

    /// <summary>How far the means lie apart: at each time point the largest and the smallest.</summary>
    private static string? Differences(Sequence sequence)
    {
        var differences = sequence
            .Cells.Select(cell =>
                (
                    cell.Key.TimePoint,
                    Means: sequence
                        .Parts.Select(part =>
                            part.TimePoints.Single(item =>
                                item.TimePoint == cell.Key.TimePoint
                            ).DecidingMeanPercent?.Mean
                        )
                        .OfType<double>()
                        .ToImmutableArray()
                )
            )
            .Where(item => item.Means.Length > 1)
            .Select(item =>
                $"{NumberText.Fixed(item.Means.Max() - item.Means.Min(), 1)} at {item.TimePoint}"
            )
            .ToImmutableArray();
        return differences.IsEmpty
            ? null
            : $"Largest difference between the mean changes of two of them, percentage points: {string.Join(", ", differences)}.";
    }
}
