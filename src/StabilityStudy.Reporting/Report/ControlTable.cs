using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report;

/// <summary>What the control results say about the runs of a time point.</summary>
internal static class ControlTable
{
    private const int Decimals = 2;

    public static Table Of(ControlEvidence controls) =>
        new(
            "Controls of the runs in which these pairs were tested",
            [
                new Column("Runs", ColumnAlignment.Right, 0.7),
                new Column("In control", ColumnAlignment.Right, 0.9),
                new Column("Without a control result", ColumnAlignment.Left, 2),
                new Column("With a control outside its range", ColumnAlignment.Left, 2),
                new Column("Shift of the bridging plasma", ColumnAlignment.Left, 3),
            ],
            [
                new Row([
                    new TableCell(NumberText.Count(controls.Runs)),
                    new TableCell(NumberText.Count(controls.RunsInControl), Emphasis.Strong),
                    new TableCell(Listed(controls.RunsWithoutControl)),
                    new TableCell(Listed(controls.RunsOutOfControl)),
                    new TableCell(Shift(controls.Bridging)),
                ]),
            ],
            controls.Bridging is null
                ? null
                : "The shift is what the runs, not the delay, add to the change; it is shown and not subtracted."
        );

    private static string Listed(IReadOnlyCollection<string> runs) =>
        runs.Count == 0 ? "none" : string.Join(", ", runs);

    private static string Shift(BridgingShift? bridging) =>
        bridging is null
            ? "no bridging plasma tested"
            : $"{Mean(bridging)}; {NumberText.Count(bridging.Plasmas)} plasmas, {NumberText.Count(bridging.BaselineResults)} results in runs of baselines, {NumberText.Count(bridging.DelayedResults)} in runs of delayed tubes";

    private static string Mean(BridgingShift bridging) =>
        bridging.MeanPercent.TryGet(out MeanInterval? mean)
            ? $"{NumberText.Change(mean.Mean, Decimals)} % ({NumberText.Percent(mean.ConfidenceLevel)} interval {NumberText.Interval(mean.Lower, mean.Upper, Decimals)} %)"
            : "not computable: " + (bridging.MeanPercent.NotComputable?.Reason ?? "");
}
