using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>Every control material with its results over the study, beside the imprecision that the protocol states.</summary>
internal static class ControlResultTable
{
    /// <summary>The table; null where the analysis holds no control results.</summary>
    public static Table? Of(StudyAnalysis analysis)
    {
        var rows = analysis
            .Protocol.Analytes.SelectMany(analyte => Rows(analysis, analyte))
            .ToImmutableArray();
        return rows.IsEmpty
            ? null
            : new Table(
                "Results of the controls over the whole study",
                [
                    new Column("Material", ColumnAlignment.Left, 1.6),
                    new Column("Results; runs", ColumnAlignment.Left, 1.1),
                    new Column("Mean", ColumnAlignment.Right, 0.9),
                    new Column("SD", ColumnAlignment.Right, 0.8),
                    new Column("CV, %", ColumnAlignment.Right, 0.7),
                    new Column("Target", ColumnAlignment.Right, 0.9),
                    new Column("Allowed", ColumnAlignment.Left, 1.5),
                    new Column("Outside", ColumnAlignment.Right, 0.8),
                ],
                rows,
                "CV: over all runs of the study. The CV that the protocol states is the one that predicts what imprecision alone would do."
            );
    }

    private static ImmutableArray<Row> Rows(StudyAnalysis analysis, Analyte analyte)
    {
        ImmutableArray<ControlSummary> controls =
        [
            .. analysis.Controls.Where(control => control.Analyte == analyte.Id),
        ];
        if (controls.IsEmpty)
        {
            return [];
        }

        var stated = analyte.BetweenRunCvPercent is { } cv
            ? $"CV stated {NumberText.Plain(cv)} %"
            : "no CV stated";
        var unit = analyte.ShownUnit.Length == 0 ? "" : $", {analyte.ShownUnit}";
        return
        [
            new Row([new TableCell($"{analyte.Id}{unit} · {stated}")], RowKind.GroupHeading),
            .. controls.Select(control => Row(control, analyte.Decimals)),
        ];
    }

    private static Row Row(ControlSummary control, int decimals)
    {
        var spread = control.Spread.Value;
        return new Row([
            new TableCell(
                control.Kind == ControlKind.Control
                    ? control.Control
                    : $"{control.Control} (bridging plasma)"
            ),
            new TableCell($"{NumberText.Count(control.Results)}; {NumberText.Count(control.Runs)}"),
            new TableCell(spread is null ? "–" : NumberText.Fixed(spread.Mean, decimals + 1)),
            new TableCell(
                spread is null ? "–" : NumberText.Fixed(spread.StandardDeviation, decimals + 1)
            ),
            new TableCell(control.CvPercent is { } cv ? NumberText.Fixed(cv, 2) : "–"),
            new TableCell(control.Target is { } target ? NumberText.Plain(target) : "–"),
            new TableCell(
                control is { AllowedLow: { } low, AllowedHigh: { } high }
                    ? $"{NumberText.Plain(low)} to {NumberText.Plain(high)}"
                    : "–"
            ),
            new TableCell(
                NumberText.Count(control.Outside),
                control.Outside > 0 ? Emphasis.Strong : Emphasis.None
            ),
        ]);
    }
}
