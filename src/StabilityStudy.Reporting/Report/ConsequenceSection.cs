using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

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
                        "The protocol names no decision level, or no specimen has two results beside one: nothing can be said of care.",
                        ParagraphStyle.Body
                    ),
                ]
                :
                [
                    new Paragraph(
                        "Care may change where a result crosses a decision level. Each line counts the specimens whose baseline and delayed result lie on different sides of a level, beside the number that imprecision alone would move. A result at the level is on its upper side. This describes; only a criterion of the protocol decides.",
                        ParagraphStyle.Body
                    ),
                    .. Worst(analysis) is { } worst
                        ? [new Paragraph(worst, ParagraphStyle.Body)]
                        : ImmutableArray<Block>.Empty,
                    .. tables,
                ]
        );
    }

    private static bool IsCounted(Cell cell) => cell.SideChanges.Any(change => change.Counted > 0);

    /// <summary>The largest share among the supported time points, or among all where none is supported, as a sentence.</summary>
    private static string? Worst(StudyAnalysis analysis)
    {
        var all = (
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            from change in cell.SideChanges
            where change.Counted > 0
            select (Sequence: sequence, Cell: cell, Change: change)
        ).ToImmutableArray();
        var supported = all.Where(item =>
                item.Cell.Conclusion == Core.Conclusions.Conclusion.Supported
            )
            .ToImmutableArray();
        var among = supported.IsEmpty ? all : supported;
        var (worst, where, at) = among.MaxBy(item =>
            (double)Moved(item.Change) / item.Change.Counted
        );
        if (worst is null)
        {
            return null;
        }

        var names = SequenceNames.Of(analysis, worst);
        return $"Most of all {(supported.IsEmpty ? "" : "supported ")}time points: {names.Title(analysis)} at {where.Key.TimePoint}, where {NumberText.Count(Moved(at))} of {Counted.Of(at.Counted, "specimen")} would have changed the side of {NumberText.Plain(at.Level)} {names.Analyte.ShownUnit}"
            + (
                at.ExpectedFromNoise is { } noise
                    ? $"; imprecision alone predicts {NumberText.Fixed(noise, 1)}."
                    : "."
            );
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
        var which = change.Up.Concat(change.Down).ToImmutableArray();
        var count =
            $"{NumberText.Count(which.Length)} of {NumberText.Count(change.Counted)} changed side";
        var sides = which.IsEmpty
            ? ""
            : $" ({NumberText.Count(change.Up.Length)} up, {NumberText.Count(change.Down.Length)} down: {SpecimenNames.Of(which)})";
        var noise = change.ExpectedFromNoise is { } expected
            ? $"; imprecision alone {NumberText.Fixed(expected, 1)}"
            : "";
        return new TableCell(
            count + sides + noise,
            which.Length > (change.ExpectedFromNoise ?? 0) + 1 ? Emphasis.Strong : Emphasis.None
        );
    }

    private static int Moved(SideChange change) => change.Up.Length + change.Down.Length;
}
