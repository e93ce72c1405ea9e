using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>Estimates beside the primary ones, a table a sequence with a column a time point.</summary>
internal static class FurtherSection
{
    public const string Title = "Further estimates";

    private const int PercentDecimals = 2;
    private const int SlopeDecimals = 3;

    public static Section Of(StudyAnalysis analysis)
    {
        var tables = analysis
            .Sequences.Where(sequence => sequence.Cells.Any(cell => cell.Estimates.Compared > 0))
            .Select(sequence => (Block)new KeepTogether([TableOf(analysis, sequence)]))
            .ToImmutableArray();
        return new Section(
            Title,
            StartsOnNewPage: false,
            tables.IsEmpty
                ? [new Paragraph("There is no compared pair of numbers.", ParagraphStyle.Body)]
                :
                [
                    new Paragraph(
                        $"Beside the estimates of each time point, for who asks for them: none of these decides. Intervals at {NumberText.Percent(CellEstimates.DescriptiveConfidence)}. Percentiles by type 8 of Hyndman and Fan. The tolerance interval holds {NumberText.Percent(FurtherEstimates.ToleranceCoverage)} of specimens if changes are normal. Level dependence: change for each doubling of the level, from the logarithm of the ratio against that of the geometric mean. Bootstrap: {NumberText.Count(FurtherEstimates.Replicates)} samples, BCa, seed {FurtherEstimates.Seed}.",
                        ParagraphStyle.Body
                    ),
                    .. tables,
                ]
        );
    }

    private static Table TableOf(StudyAnalysis analysis, Sequence sequence)
    {
        var cells = sequence.Cells.Where(cell => cell.Estimates.Compared > 0).ToImmutableArray();
        var refusals = new Refusals();
        var analyte = SequenceNames.Of(analysis, sequence).Analyte;
        var (unit, decimals) = (analyte.ShownUnit, analyte.Decimals + 1);
        Row Line(string name, Func<FurtherEstimates, string> text) =>
            new([
                new TableCell(name),
                .. cells.Select(cell => new TableCell(text(cell.Estimates.Further))),
            ]);
        string Or<T>(Estimate<T> estimate, Func<T, string> text)
            where T : class =>
            estimate.TryGet(out var value)
                ? text(value)
                : refusals.Mark(
                    RefusalWords.Sentence(estimate),
                    estimate.NotComputable!.Point is { } point
                        ? NumberText.Fixed(point.Value, SlopeDecimals)
                        : null
                );
        string InUnitOf(double bias, double lower, double upper) =>
            $"{NumberText.Change(bias, decimals)} ({NumberText.Interval(lower, upper, decimals)})";
        string InUnit(BiasAtLevel bias) => InUnitOf(bias.Bias, bias.Lower, bias.Upper);
        Row AtLevel(string line, decimal level, Func<ChangeAtLevel, string> text) =>
            Line(
                $"{line}: change at {NumberText.Plain(level)}, {unit}",
                item =>
                    item.ChangesAtLevels.FirstOrDefault(at => at.Level == level) is { } at
                        ? text(at)
                        : "level not covered"
            );
        ImmutableArray<Row> rows =
        [
            Line(
                "Percentiles 2.5 and 97.5 %, %",
                item =>
                    Or(
                        item.PercentilesPercent,
                        range => NumberText.Interval(range.Lower, range.Upper, PercentDecimals)
                    )
            ),
            Line(
                "Tolerance interval, %",
                item =>
                    Or(
                        item.TolerancePercent,
                        range => NumberText.Interval(range.Lower, range.Upper, PercentDecimals)
                    )
            ),
            Line(
                "Shapiro–Wilk W; p",
                item =>
                    Or(
                        item.NormalityPercent,
                        test =>
                            $"{NumberText.Fixed(test.W, SlopeDecimals)}; {NumberText.PValue(test.PValue)}"
                    )
            ),
            Line(
                "Signed-rank test of no change (over specimens), p",
                item => Or(item.SignedRank, test => NumberText.PValue(test.PValue))
            ),
            Line(
                "Weighted least squares: slope",
                item => Or(item.WeightedLeastSquares, line => Slope(line.Slope))
            ),
            Line(
                "Theil–Sen: slope",
                item =>
                    Or(
                        item.TheilSen,
                        line => WithInterval(line.Slope, line.SlopeLower, line.SlopeUpper)
                    )
            ),
            Line(
                "Deming, bootstrap: slope",
                item =>
                    Or(
                        item.DemingBootstrap,
                        line => WithInterval(line.Value, line.Lower, line.Upper)
                    )
            ),
            .. cells
                .SelectMany(cell => cell.Estimates.Further.ChangesAtLevels)
                .Select(at => at.Level)
                .Distinct()
                .Order()
                .SelectMany(level =>
                    new[]
                    {
                        AtLevel("Deming", level, at => Or(at.Deming, InUnit)),
                        AtLevel("Least squares", level, at => Or(at.OrdinaryLeastSquares, InUnit)),
                        AtLevel(
                            "Passing–Bablok",
                            level,
                            at =>
                                Or(
                                    at.PassingBablok,
                                    bias => InUnitOf(bias.Bias, bias.Lower, bias.Upper)
                                )
                        ),
                    }
                ),
            Line(
                "Level dependence, % a doubling",
                item =>
                    Or(
                        item.LevelDependence,
                        line =>
                            $"{NumberText.Change(line.Slope.Value, PercentDecimals)} ({NumberText.Interval(line.Slope.Lower, line.Slope.Upper, PercentDecimals)})"
                    )
            ),
            Line(
                "Kendall's τ-b",
                item => Or(item.Kendall, tau => WithInterval(tau.TauB, tau.Lower, tau.Upper))
            ),
            Line(
                "Lin's concordance",
                item =>
                    Or(
                        item.Concordance,
                        found => WithInterval(found.Concordance, found.Lower, found.Upper)
                    )
            ),
        ];
        return new Table(
            SequenceNames.Of(analysis, sequence).Title(analysis),
            [
                new Column("Estimate", ColumnAlignment.Left, 2.4),
                .. cells.Select(cell => new Column(
                    cell.Key.TimePoint.ToString(),
                    ColumnAlignment.Left,
                    2
                )),
            ],
            rows,
            refusals.Note
        );
    }

    private static string Slope(CoefficientInterval slope) =>
        WithInterval(slope.Value, slope.Lower, slope.Upper);

    private static string WithInterval(double value, double lower, double upper) =>
        $"{NumberText.Fixed(value, SlopeDecimals)} ({NumberText.Range(lower, upper, SlopeDecimals)})";
}
