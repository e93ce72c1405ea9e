using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Model;

/// <summary>The page of one cell: two plots and the estimates beside their criteria.</summary>
internal static class DemoCell
{
    public static Section Section() =>
        new(
            "aPTT · no anticoagulant · whole blood at room temperature · 12 h",
            true,
            [
                new VerdictBlock([
                    new VerdictLine(
                        VerdictShape.Supported,
                        "Supported",
                        "aPTT, no anticoagulant, 12 h",
                        "Both criteria are met; no assumption fails."
                    ),
                ]),
                new ChartRow([DemoCharts.Difference(), DemoCharts.Regression()]),
                Estimates(),
                new Heading("Remarks"),
                new Paragraph(
                    "The differences grow with the level, so limits of agreement on the percent scale describe the data better; the criterion is on that scale. The largest single change was +18.1 % (specimen S-0417, clot suspected on review, kept in the analysis because the protocol names no such exclusion).",
                    ParagraphStyle.Body
                ),
            ]
        );

    private static Table Estimates()
    {
        Row Line(string what, string estimate, string interval, string criterion, string answer) =>
            new([
                new TableCell(what),
                new TableCell(estimate),
                new TableCell(interval),
                new TableCell(criterion),
                new TableCell(answer),
            ]);
        return new Table(
            "Table 2. Estimates and the criterion that each one feeds",
            [
                new Column("Estimate", ColumnAlignment.Left, 2.2),
                new Column("Value", ColumnAlignment.DecimalPoint, 1),
                new Column("Interval", ColumnAlignment.Center, 1.6),
                new Column("Criterion", ColumnAlignment.Left, 2.6),
                new Column("Answer", ColumnAlignment.Left, 0.9),
            ],
            [
                Line(
                    "Mean change, %",
                    "+2.9",
                    "+2.2 to +3.6 (90 %)",
                    "mean: interval within ±7.5 %",
                    "met"
                ),
                Line(
                    "Share within ±15 %",
                    "0.950",
                    "0.831 to 0.994 (95 %)",
                    "each: share at least 85 %",
                    "met"
                ),
                Line("Median change, %", "+2.4", "+1.8 to +3.3 (95 %)", "", ""),
                Line("Standard deviation of changes, %", "2.7", "2.2 to 3.5 (95 %)", "", ""),
                Line("Slope (Deming)", "1.031", "0.998 to 1.064 (95 %)", "", ""),
                Line("Intercept (Deming), s", "−0.04", "−1.20 to 1.12 (95 %)", "", ""),
                Line(
                    "Change at 60 s, s",
                    "+1.82",
                    "+1.21 to +2.43 (95 %)",
                    "decision level 60 s: within ±7.5 %",
                    "met"
                ),
            ],
            "Intervals of the median are exact; those of the regression are bootstrap intervals with 10 000 resamples, seed 20260101."
        );
    }
}
