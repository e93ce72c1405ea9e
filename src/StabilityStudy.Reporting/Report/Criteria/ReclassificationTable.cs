using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>How many specimens change the side of each decision level, beside the number that imprecision alone predicts.</summary>
internal static class ReclassificationTable
{
    public static Table Of(ReclassificationResult result, SequenceNames names) =>
        new(
            $"Specimens that change side of a decision level (criterion {result.Criterion})",
            [
                new Column("Level", ColumnAlignment.Left, 0.9),
                new Column("Clear by more than", ColumnAlignment.Left, 0.9),
                new Column("Clearly up, down", ColumnAlignment.Left, 0.8),
                new Column("Failed, undecidable", ColumnAlignment.Left, 1.2),
                new Column("Of", ColumnAlignment.Left, 0.4),
                new Column(
                    $"Share changed, one-sided {NumberText.Percent(result.ConfidenceLevel)} bounds",
                    ColumnAlignment.Left,
                    2.2
                ),
                new Column("Any change", ColumnAlignment.Left, 0.6),
                new Column("Imprecision alone predicts", ColumnAlignment.Left, 1.1),
                new Column("Verdict", ColumnAlignment.Left, 1.2),
                new Column("Which", ColumnAlignment.Left, 2.4),
            ],
            [
                .. result.Levels.Select(level => Row(level, result.LargestShare, names)),
                .. result.Together is { } any
                    ? [Row(any, result.LargestShare)]
                    : ImmutableArray<Row>.Empty,
            ],
            $"Allowed: at most {NumberText.Percent(result.LargestShare)} clear changes, where one of the two results lies further from the level than stated; any change and what imprecision predicts of it are shown beside. A result at the level is on its upper side; failed and undecidable specimens count as changed.{OneWay(result)}"
        );

    private static string OneWay(ReclassificationResult result) =>
        result.Levels.Select(level => level.Direction).FirstOrDefault() switch
        {
            SideDirection.Both => "",
            SideDirection.Down => " Only changes downward count; those upward are shown.",
            SideDirection.Up => " Only changes upward count; those downward are shown.",
        };

    /// <summary>All levels together: only what each specimen is counted once for.</summary>
    private static Row Row(SidesTogether any, double largestShare) =>
        new([
            new TableCell("any of them"),
            new TableCell("as above"),
            new TableCell(""),
            new TableCell(""),
            new TableCell(NumberText.Count(any.Counted)),
            new TableCell(Share(any.Bounds, largestShare)),
            new TableCell(""),
            new TableCell(""),
            new TableCell(
                TradeWords.Of(any.Verdict),
                Emphasis.Strong,
                TradeWords.ShapeOf(any.Verdict)
            ),
            new TableCell(SpecimenNames.Of(any.ChangedSpecimens)),
        ]);

    private static string Share(Estimate<ProportionBounds> found, double largestShare)
    {
        string Against(double share) => NumberText.AgainstLimit(100 * share, 100 * largestShare, 1);
        return found.TryGet(out var bounds)
            ? $"{Against(bounds.Share)} ({Against(bounds.OneSidedLower)} to {Against(bounds.OneSidedUpper)}) %"
            : "none counted";
    }

    private static Row Row(LevelReclassification level, double largestShare, SequenceNames names) =>
        new([
            new TableCell($"{NumberText.Plain(level.Level)} {names.Analyte.ShownUnit}".TrimEnd()),
            new TableCell($"{NumberText.Plain(level.Zone)} {names.Analyte.ShownUnit}".TrimEnd()),
            new TableCell(
                $"{NumberText.Count(level.MovedUp)}, {NumberText.Count(level.MovedDown)}"
            ),
            new TableCell(
                $"{NumberText.Count(level.Failed)}, {NumberText.Count(level.Undecidable)}"
            ),
            new TableCell(NumberText.Count(level.Counted)),
            new TableCell(Share(level.Bounds, largestShare)),
            new TableCell(NumberText.Count(level.OnOtherSide)),
            new TableCell(
                level.ExpectedFromNoise is { } noise ? NumberText.Fixed(noise, 1) : "no CV stated"
            ),
            new TableCell(
                TradeWords.Of(level.Verdict),
                Emphasis.Strong,
                TradeWords.ShapeOf(level.Verdict)
            ),
            new TableCell(SpecimenNames.Of(level.ChangedSpecimens)),
        ]);
}
