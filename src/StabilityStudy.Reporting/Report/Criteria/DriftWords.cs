using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on the drift over all time points.</summary>
internal sealed record DriftWords(DriftCriterionResult Result, SequenceNames Names)
    : ICriterionWords
{
    private const int Decimals = 2;

    public static CriterionRuleWords OfRule(DriftCriterion criterion) =>
        new(
            $"the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the fitted mean change at the planned delay lies strictly inside the limit under every declared shape: {string.Join("; ", criterion.Shapes.Select(TradeWords.Of))}.",
            "under any shape the whole interval is at the limit or beyond."
        );

    public string Requirement =>
        $"Under every declared shape the {NumberText.Percent(Result.ConfidenceLevel)} interval of the fitted change at the planned delay lies strictly inside {TradeWords.Of(Result.Limit, Names.Analyte.ShownUnit)}.";

    public string DecidingFigure =>
        string.Join(
            "; ",
            Result.Shapes.Select(shape =>
                $"{TradeWords.Of(shape.Shape)}: {PredictedPercent(shape)}"
            )
        );

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            .. Result.Shapes.Select(shape => new CriterionFigure(
                false,
                $"by drift in {TradeWords.Of(shape.Shape)}: {PredictedPercent(shape)}",
                $"±{NumberText.Plain((decimal)Math.Round(shape.LimitPercent, 4))} %",
                shape.Verdict
            )),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        CriterionWords.ReasonWith(withFigures ? Figures(true) : [], Result);

    public IEnumerable<Row> EstimateRows => [];

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) => [DriftCriterionTable.Of(Result)];

    public IEnumerable<Block> ByHand(Cell cell) => [];

    /// <summary>The change that a shape of drift predicts with its interval, without unit; null when there is none.</summary>
    public static string? Predicted(ShapeResult shape) =>
        shape.Predicted is { } point
            ? CriterionWords.WithInterval(
                (point.Change, point.LowerBound, point.UpperBound),
                shape.LimitPercent,
                Decimals
            )
            : null;

    private static string PredictedPercent(ShapeResult shape) =>
        Predicted(shape) is { } change ? change + " %" : "not computable";
}
