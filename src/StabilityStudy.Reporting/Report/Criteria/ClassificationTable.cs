using StabilityStudy.Core.Criteria.Classification;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>From which class to which the specimens went.</summary>
internal static class ClassificationTable
{
    public static Table Of(ClassificationResult result) =>
        new(
            $"Classes: baseline by row, delayed by column (criterion {result.Criterion})",
            [
                new Column("Baseline", ColumnAlignment.Left, 1.6),
                .. result.Classes.Select(name => new Column(name, ColumnAlignment.Right, 1)),
                new Column("Baseline total", ColumnAlignment.Right, 1),
            ],
            [.. result.Classes.Select((name, baseline) => Row(result, name, baseline))],
            Note(result)
        );

    private static Row Row(ClassificationResult result, string name, int baseline)
    {
        int Count(int delayed) =>
            result
                .Table.Where(item => item.Baseline == baseline && item.Delayed == delayed)
                .Sum(item => item.Count);
        return new Row([
            new TableCell(name),
            .. result.Classes.Select(
                (_, delayed) =>
                    new TableCell(
                        NumberText.Count(Count(delayed)),
                        delayed == baseline ? Emphasis.Strong : Emphasis.None
                    )
            ),
            new TableCell(NumberText.Count(result.Classes.Select((_, i) => Count(i)).Sum())),
        ]);
    }

    private static string Note(ClassificationResult result)
    {
        var required = 100 * result.RequiredShare;
        string Against(double share) => NumberText.AgainstLimit(100 * share, required, 1);
        var share = result.Bounds.TryGet(out var bounds)
            ? $"{NumberText.Count(result.Kept)} of {NumberText.Count(result.Counted)} specimens keep their class: {Against(bounds.Share)} ({Against(bounds.OneSidedLower)} to {Against(bounds.OneSidedUpper)}) %, one-sided {NumberText.Percent(result.ConfidenceLevel)} bounds, at least {NumberText.Percent(result.RequiredShare)} required."
            : "No specimen counts.";
        var noise = result.ExpectedFromNoise is { } expected
            ? $" Imprecision alone predicts {NumberText.Fixed(expected, 1)} changed classes."
            : "";
        return $"{share} Counted as changed beside the table: {NumberText.Count(result.Failed)} failed, {NumberText.Count(result.Undecidable)} undecidable. Weak positives: {NumberText.Count(result.WeakPositives)}, at least {NumberText.Count(result.WeakPositivesMinimum)} required.{noise} Changed: {SpecimenNames.Of(result.ChangedSpecimens)}.";
    }
}
