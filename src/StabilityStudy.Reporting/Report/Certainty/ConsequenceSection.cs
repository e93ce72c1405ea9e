using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>How many patients' results would have stood on the other side of a decision level after the delay.</summary>
internal static class ConsequenceSection
{
    public const string Title = "What a delay could have meant for patients";

    public static Section Of(StudyAnalysis analysis)
    {
        var tables = analysis
            .Sequences.Where(sequence => sequence.Cells.Any(IsCounted))
            .Select(sequence => (Block)new KeepTogether([TableOf(analysis, sequence)]))
            .ToImmutableArray();
        return new Section(
            Title,
            StartsOnNewPage: false,
            tables.IsEmpty
                ?
                [
                    new Paragraph(
                        (
                            analysis.Protocol.Analytes.All(analyte =>
                                analyte.DecisionLevels.IsEmpty
                            )
                                ? "The protocol names no decision level"
                                : "No specimen has two results that can be read against a decision level"
                        ) + ": nothing can be said of care.",
                        ParagraphStyle.Body
                    ),
                ]
                :
                [
                    new Paragraph(
                        "Care may change where a result crosses a decision level. Each line counts the specimens whose baseline and delayed result lie on different sides of a level, beside the number that imprecision alone would move. A result at the level is on its upper side. This describes; only a criterion of the protocol decides. In bold: over one more than imprecision alone predicts. Not tested: fewer than "
                            + NumberText.Count(LevelCoverage.FewestOnEitherSide)
                            + " baselines on a side of the level, so that no change shows nothing.",
                        ParagraphStyle.Body
                    ),
                    new Bullets([.. Most(analysis)]),
                    .. tables,
                ]
        );
    }

    private static bool IsCounted(Cell cell) => cell.SideChanges.Any(change => change.Counted > 0);

    /// <summary>The largest share where the decision is to approve, and the largest where it is not.</summary>
    private static IEnumerable<string> Most(StudyAnalysis analysis)
    {
        var all = (
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            from change in cell.SideChanges
            where change.IsCovered || change.Changed > 0
            select (Sequence: sequence, Cell: cell, Change: change)
        ).ToLookup(item => item.Cell.Conclusion == Conclusion.Supported);
        if (all.Count == 0)
        {
            yield return "No decision level has enough baselines on both sides: nothing is known about changes of side.";
        }

        foreach (var supported in new[] { true, false })
        {
            if (!all[supported].Any())
            {
                continue;
            }

            var most = all[supported].Max(item => Share(item.Change));
            var places = all[supported]
                .Where(item => item.Change.Changed > 0 && Share(item.Change) == most)
                .Select(item => Place(analysis, item.Sequence, item.Cell, item.Change))
                .ToImmutableArray();
            var among = supported ? "supported time points" : "time points not supported";
            yield return places.IsEmpty
                ? $"At {among} no specimen changed side of a level that was tested."
                : $"Most at {among}: {string.Join("; ", places)}.";
        }
    }

    private static double Share(SideChange change) => (double)change.Changed / change.Counted;

    /// <summary>"aPTT · No anticoagulant at 8 h, 1 of 39 specimens across 40 s (imprecision alone: 0.5)".</summary>
    private static string Place(
        StudyAnalysis analysis,
        Sequence sequence,
        Cell cell,
        SideChange change
    )
    {
        var names = SequenceNames.Of(analysis, sequence);
        var noise = change.ExpectedFromNoise is { } expected
            ? $" (imprecision alone: {NumberText.Fixed(expected, 1)})"
            : "";
        return $"{names.Title(analysis)} at {cell.Key.TimePoint}, {NumberText.Count(change.Changed)} of {Counted.Of(change.Counted, "specimen")} across {NumberText.Plain(change.Level)} {names.Analyte.ShownUnit}".TrimEnd()
            + noise;
    }

    private static Table TableOf(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var cells = sequence.Cells.Where(IsCounted).ToImmutableArray();
        return new Table(
            names.Title(analysis),
            [
                new Column("Level", ColumnAlignment.Left, 1),
                .. cells.Select(cell => new Column(
                    cell.Key.TimePoint.ToString(),
                    ColumnAlignment.Left,
                    2.6
                )),
            ],
            [
                .. names.Analyte.DecisionLevels.Select(level => new Row([
                    new TableCell($"{NumberText.Plain(level)} {names.Analyte.ShownUnit}".TrimEnd()),
                    .. cells.Select(cell => CellOf(cell, level)),
                ])),
            ],
            null
        );
    }

    private static TableCell CellOf(Cell cell, decimal level)
    {
        var change = cell.SideChanges.Single(item => item.Level == level);
        if (change is { Changed: 0, IsCovered: false })
        {
            return new TableCell(
                $"not tested: {NumberText.Count(change.BaselinesBelow)} baselines below, {NumberText.Count(change.Counted - change.BaselinesBelow)} at or above",
                Emphasis.Muted
            );
        }

        var noise = change.ExpectedFromNoise is { } expected
            ? $"; imprecision alone {NumberText.Fixed(expected, 1)}"
            : "";
        string[] sides = [.. Side("up", change.Up), .. Side("down", change.Down)];
        var tested = change.IsCovered ? "" : "hardly tested; ";
        return new TableCell(
            tested
                + $"{NumberText.Count(change.Changed)} of {NumberText.Count(change.Counted)} changed side"
                + (sides.Length == 0 ? "" : $" ({string.Join("; ", sides)})")
                + noise,
            change.IsBeyondNoise ? Emphasis.Strong : Emphasis.None
        );
    }

    private static IEnumerable<string> Side(string where, ImmutableArray<string> specimens) =>
        specimens.IsEmpty
            ? []
            :
            [
                specimens.Length > SpecimenNames.Most
                    ? $"{NumberText.Count(specimens.Length)} {where}, marked under Every specimen"
                    : $"{where}: {SpecimenNames.Of(specimens)}",
            ];
}
