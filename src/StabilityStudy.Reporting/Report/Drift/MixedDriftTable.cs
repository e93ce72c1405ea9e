using StabilityStudy.Core.Drift;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>The same drift by a mixed model, in the three shapes side by side.</summary>
internal static class MixedDriftTable
{
    private const int Decimals = 2;

    /// <summary>The table; a sentence where no model could be computed, and why; nothing where the results are classes.</summary>
    public static IEnumerable<Block> Of(StudyAnalysis analysis)
    {
        var all = analysis
            .Sequences.SelectMany(sequence => sequence.Drift.Mixed)
            .ToImmutableArray();
        if (!all.IsEmpty)
        {
            yield return FittedDriftTable.Of(analysis);
            yield return all.Any(mixed => mixed.Fit.Value is not null)
                ? TableOf(analysis)
                : Refused(all);
        }
    }

    private static Paragraph Refused(ImmutableArray<MixedDrift> all) =>
        new(
            "Not computed: a mixed model of the drift of all results in three shapes. "
                + string.Join(
                    " ",
                    all.Select(mixed => RefusalWords.Sentence(mixed.Fit))
                        .Distinct(StringComparer.Ordinal)
                ),
            ParagraphStyle.Body
        );

    private static Table TableOf(StudyAnalysis analysis)
    {
        var refusals = new Refusals();
        ImmutableArray<Row> rows =
        [
            .. analysis.Sequences.SelectMany(sequence => Rows(analysis, sequence, refusals)),
        ];
        return new(
            "Drift by a mixed model of all results, in three shapes",
            [
                new Column("Shape", ColumnAlignment.Left, 2.2),
                new Column("Results", ColumnAlignment.Right, 0.9),
                new Column("At", ColumnAlignment.Left, 0.8),
                new Column("Fitted, %", ColumnAlignment.Left, 2.4),
                new Column("SD between specimens, %", ColumnAlignment.Left, 1.6),
                new Column("Scatter about own line, %", ColumnAlignment.Left, 1.6),
                new Column("AICc", ColumnAlignment.Right, 1),
                new Column("Bound leaves the limit", ColumnAlignment.Left, 1.9),
            ],
            rows,
            $"Every specimen with a level and a slope of its own (restricted maximum likelihood on logarithms, baselines included), fitted change of the geometric mean from the mean baseline delay with one-sided 95 % bounds that span specimens, days, runs and persons. Bound leaves the limit: hours from {OriginWords.Start(analysis.Protocol.TimeOrigin)} at which a bound reaches the allowable bias, two where either side may be reached; beyond the longest actual delay nobody measured. AICc: of the three shapes the one with the smallest follows the results best; the shape was declared beforehand and stays. It describes only."
                + (refusals.Note is { } note ? " " + note : "")
        );
    }

    private static IEnumerable<Row> Rows(
        StudyAnalysis analysis,
        Sequence sequence,
        Refusals refusals
    )
    {
        var names = SequenceNames.Of(analysis, sequence);
        var baseline = sequence.Drift.Estimate.Value?.BaselineDelayHours ?? 0;
        var last = sequence.Cells.LastOrDefault(cell =>
            cell.Estimates.Compared > 0 && cell.Conclusion != Conclusion.NotAssessed
        );
        if (sequence.Drift.Mixed.IsEmpty || last is null)
        {
            return [];
        }

        var longest = LongestDelay.Of(sequence);
        return sequence
            .Drift.Mixed.Select(mixed =>
                Line(mixed, baseline, last, longest, !sequence.Drift.Misfits.IsEmpty, refusals)
            )
            .Prepend(new Row([new TableCell(names.Title(analysis))], RowKind.GroupHeading));
    }

    private static Row Line(
        MixedDrift mixed,
        double baselineHours,
        Cell last,
        double longest,
        bool misfit,
        Refusals refusals
    )
    {
        var name = new TableCell(
            TradeWords.Of(mixed.Shape) + (mixed.IsDeclared ? " (declared)" : ""),
            mixed.IsDeclared ? Emphasis.Strong : Emphasis.None
        );
        if (!mixed.Fit.TryGet(out var fit))
        {
            return new Row([
                name,
                .. Enumerable.Repeat(new TableCell(""), 2),
                new TableCell(refusals.Mark(RefusalWords.Sentence(mixed.Fit))),
                .. Enumerable.Repeat(new TableCell(""), 4),
            ]);
        }

        var growth =
            SpecimenSlopes.Transform(mixed.Shape, last.Key.TimePoint.Delay.TotalHours)
            - SpecimenSlopes.Transform(mixed.Shape, baselineHours);
        string Change(double slope) => NumberText.Change(Percent(slope * growth), Decimals);
        var emphasis = mixed.IsDeclared ? Emphasis.Strong : Emphasis.None;
        return new Row([
            name,
            new TableCell(NumberText.Count(fit.ResultCount)),
            new TableCell(last.Key.TimePoint.ToString()),
            new TableCell(
                $"{Change(fit.Slope)} ({NumberText.Interval(Percent(fit.SlopeLower * growth), Percent(fit.SlopeUpper * growth), Decimals)})",
                emphasis
            ),
            new TableCell(
                NumberText.Fixed(Math.Sqrt(fit.SlopeVariance) * growth, Decimals) + Boundary(fit)
            ),
            new TableCell(NumberText.Fixed(Math.Sqrt(fit.ResidualVariance), Decimals)),
            new TableCell(
                fit.CorrectedInformation is { } information ? NumberText.Fixed(information, 1) : "–"
            ),
            new TableCell(
                mixed.IsDeclared && misfit ? DriftRemarks.NoTime : Crossing(mixed.Crossing, longest)
            ),
        ]);
    }

    /// <summary>"above at 7.8 h", two sides where either may be reached.</summary>
    public static string Crossing(CrossingRoots? roots, double longest)
    {
        if (roots is null)
        {
            return "no limit in percent";
        }

        (double? Hours, string Side)[] sides =
        [
            (roots.UpperLimitHours, "above"),
            (roots.LowerLimitHours, "below"),
        ];
        string[] within =
        [
            .. sides
                .Where(root => root.Hours <= longest)
                .OrderBy(root => root.Hours)
                .Select(root => $"{root.Side} at {DurationText.FormatComputed(root.Hours ?? 0)}"),
        ];
        return within.Length == 0
            ? $"not within {DurationText.FormatComputed(longest)}"
            : string.Join(", ", within);
    }

    /// <summary>Percent for a change of 100·ln.</summary>
    private static double Percent(double logarithm) => 100 * double.ExpM1(logarithm / 100);

    private static string Boundary(RandomSlopeFit fit) =>
        fit.Boundary switch
        {
            VarianceBoundary.NoSlopeVariance => ": no more than scatter",
            VarianceBoundary.NoInterceptVariance => "; levels alike",
            VarianceBoundary.FullCorrelation => "; tied to the level",
            VarianceBoundary.None => "",
        };
}
