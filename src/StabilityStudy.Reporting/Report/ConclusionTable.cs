using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>The conclusions of all cells with the figures that decided them.</summary>
internal static class ConclusionTable
{
    public static Table Of(StudyAnalysis analysis) =>
        new(
            "Conclusions by patient group and time point",
            [
                new Column("Time", ColumnAlignment.Left, 0.8),
                new Column("Pairs", ColumnAlignment.Right, 0.7),
                new Column("Mean change (interval)", ColumnAlignment.Left, 2.9),
                new Column("Allowed", ColumnAlignment.Left, 1.1),
                new Column("Within limit (lower bound)", ColumnAlignment.Left, 2.6),
                new Column("Required", ColumnAlignment.Left, 1),
                new Column("Conclusion", ColumnAlignment.Left, 1.7),
            ],
            [.. analysis.Sequences.SelectMany(sequence => Rows(analysis, sequence))],
            Note(analysis)
        );

    private static IEnumerable<Row> Rows(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        yield return new Row([new TableCell(names.Title(analysis))], RowKind.GroupHeading);
        foreach (var cell in sequence.Cells)
        {
            yield return Row(cell, names);
        }
    }

    private static Row Row(Cell cell, SequenceNames names)
    {
        var bias = cell.Criteria.OfType<BiasResult>().FirstOrDefault();
        var individual = cell.Criteria.OfType<IndividualResult>().FirstOrDefault();
        var reached = cell.Conclusion != Conclusion.NotReached;
        var emphasis = reached ? Emphasis.None : Emphasis.Muted;
        return new Row([
            new TableCell(cell.Key.TimePoint.ToString()),
            new TableCell(NumberText.Count(cell.Estimates.Compared), emphasis),
            new TableCell(
                bias is null ? "no criterion" : CriterionWords.MeanWithInterval(bias, names),
                emphasis
            ),
            new TableCell(bias is null ? "" : CriterionWords.Allowed(bias, names), emphasis),
            new TableCell(
                individual is null
                    ? "no criterion"
                    : CriterionWords.ShareWithLowerBound(individual),
                emphasis
            ),
            new TableCell(
                individual is null ? "" : NumberText.Percent(individual.RequiredShare),
                emphasis
            ),
            new TableCell(
                TradeWords.Of(cell.Conclusion),
                reached ? Emphasis.Strong : Emphasis.Muted,
                TradeWords.ShapeOf(cell.Conclusion)
            ),
        ]);
    }

    private static string Note(StudyAnalysis analysis)
    {
        var cells = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Criteria)
            .ToImmutableArray();
        var bias = cells.OfType<BiasResult>().FirstOrDefault();
        var individual = cells.OfType<IndividualResult>().FirstOrDefault();
        var parts = new[]
        {
            bias is null
                ? null
                : $"Interval: {NumberText.Percent(bias.ConfidenceLevel)}, by specimens or by collection days, the wider.",
            individual?.Bounds.Value is { } bounds
                ? $"Lower bound: exact, one-sided {NumberText.Percent(bounds.ConfidenceLevel)}; failed tubes count as outside the limit."
                : null,
        };
        return string.Join(" ", parts.OfType<string>());
    }
}
