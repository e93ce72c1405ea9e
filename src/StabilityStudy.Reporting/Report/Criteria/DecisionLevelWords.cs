using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on the change predicted at decision levels.</summary>
internal sealed record DecisionLevelWords(DecisionLevelResult Result, SequenceNames Names)
    : ICriterionWords
{
    public static CriterionRuleWords OfRule(DecisionLevelCriterion criterion) =>
        new(
            $"at every level the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the change that the weighted Deming line predicts lies strictly inside the limit. It is the widest of the intervals by specimens, collection days, runs and persons, lengthened for skewness.",
            "at any level the whole interval is at the limit or beyond.",
            "Decision levels: inconclusive at a level without at least 3 baselines on either side, or with a between-specimen SD of less than 5 times the analytical SD, or where the specimens on one side of the level do not show by themselves what the line through all shows."
        );

    public string Requirement =>
        $"At {CriterionWords.Levels(Result.Levels.Select(item => item.Level), Names)} the {NumberText.Percent(Result.ConfidenceLevel)} interval of the predicted change lies strictly inside {TradeWords.Of(Result.Limit, Names.Analyte.ShownUnit)}.";

    public string DecidingFigure =>
        string.Join(
            "; ",
            Result.Levels.Select(level =>
                $"{CriterionWords.Levels([level.Level], Names)}: {(Predicted(level) is { } predicted ? $"{predicted} {Names.Analyte.ShownUnit}".TrimEnd() : "not covered")}"
            )
        );

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            .. Result.Levels.Select(level => new CriterionFigure(
                false,
                $"at {NumberText.Plain(level.Level)}: {Predicted(level) ?? "not covered"}",
                $"±{NumberText.Plain((decimal)Math.Round(level.Allowed, 4))} {Names.Analyte.ShownUnit}",
                level.Verdict
            )),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        CriterionWords.ReasonWith(withFigures ? Figures(true) : [], Result);

    public IEnumerable<Row> EstimateRows => [];

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) =>
        [DecisionLevelTable.Of(Result, Names)];

    public IEnumerable<Block> ByHand(Cell cell) => [];

    /// <summary>The change predicted at a level with its interval, without unit: "+1.2 (−0.3 to +2.7)"; null when there is none.</summary>
    private string? Predicted(LevelResult level) =>
        level.Change.TryGet(out var change)
            ? CriterionWords.WithInterval(
                (change.Bias, change.Lower, change.Upper),
                level.Allowed,
                Names.EstimateDecimals
            )
            : null;
}
