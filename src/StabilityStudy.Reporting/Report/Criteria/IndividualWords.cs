using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on single specimens.</summary>
internal sealed record IndividualWords(
    IndividualResult Result,
    SequenceNames Names,
    StudyProtocol Protocol
) : ICriterionWords
{
    public static CriterionRuleWords OfRule(IndividualCriterion criterion) =>
        criterion.Rule switch
        {
            DecisionRule.PointOnly => new(
                $"the share of specimens within the limit reaches {NumberText.Plain(criterion.SharePercentMinimum)} % ({CriterionWords.EstimateAlone}).",
                "the share is below it."
            ),
            DecisionRule.Confidence => new(
                $"the exact one-sided {NumberText.Percent(criterion.ConfidenceLevel)} lower bound of the share of specimens within the limit reaches {NumberText.Plain(criterion.SharePercentMinimum)} %, also with every change moved by what the runs could have added (below).",
                "the one-sided upper bound is below it, even with every undecidable specimen counted inside."
            ),
        };

    public string Requirement =>
        $"At least {Required} of specimens within {TradeWords.Of(Result.Limit, Names.Analyte.ShownUnit)}"
        + (
            IsEstimateAlone
                ? $" ({CriterionWords.EstimateAlone})."
                : $", by the exact one-sided {NumberText.Percent(Result.ConfidenceLevel)} lower bound."
        );

    /// <summary>Share with the bound that is read against the required one: "38 of 39; ≥ 88.4 %", and where it is not met "26 of 40; ≤ 77.5 %".</summary>
    public string DecidingFigure =>
        Result.Bounds.TryGet(out var bounds)
            ? $"{Result.Agreement.Inside} of {Result.Agreement.Counted}; {BoundWords.Of(bounds, Result.RequiredShare, Result.Verdict)}"
            : "none counted";

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            new(
                true,
                DecidingFigure,
                Required
                    + (withLimits ? " within " + Limit : "")
                    + (IsEstimateAlone ? ", " + CriterionWords.NoErrorControl : ""),
                Result.Verdict
            ),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        !Result.Bounds.TryGet(out var bounds) ? "no usable pair"
        : withFigures
            ? $"{Inside} specimens within {Limit}{Control}: "
                + (
                    IsShownTooSmall(bounds.OneSidedUpper)
                        ? $"upper bound {BoundWords.Upper(bounds, Result.RequiredShare)}, below the required {Required}{Undecidable}"
                    : bounds.OneSidedLower < Result.RequiredShare
                        ? $"lower bound {BoundWords.Lower(bounds, Result.RequiredShare)}, below the required {Required}{Undecidable}"
                    : $"lower bound {BoundWords.Lower(bounds, Result.RequiredShare)}, but {ReasonWords.Of(Result.Reasons[0])}"
                )
        : Result.Verdict == Verdict.NotMet
            ? $"too many specimens{Control} change by more than the limit"
        : bounds.OneSidedLower < Result.RequiredShare
            ? $"{Inside} within the limit{Control} do not show the required {Required}"
        : ReasonWords.Of(Result.Reasons[0]);

    public IEnumerable<Row> EstimateRows => IndividualRows.Of(Result);

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) => [];

    public IEnumerable<Block> ByHand(Cell cell) =>
        Result.Bounds.Value is null ? [] : [new KeepTogether([HandCount.Of(Result, cell, Names)])];

    private bool IsEstimateAlone => CriterionWords.IsEstimateAlone(Result, Protocol);

    private bool IsShownTooSmall(double upperBound) =>
        Result.Verdict == Verdict.NotMet && upperBound < Result.RequiredShare;

    private string Required => NumberText.Percent(Result.RequiredShare);

    private string Limit => CriterionWords.Shortened(Result.Limit, Names);

    private string Control => IsEstimateAlone ? $" ({CriterionWords.NoErrorControl})" : "";

    private string Inside =>
        $"{NumberText.Count(Result.Agreement.Inside)} of {NumberText.Count(Result.Agreement.Counted)}";

    private string Undecidable =>
        Result.Agreement.Undecidable > 0
            ? $" ({NumberText.Count(Result.Agreement.Undecidable)} of them undecidable, counted as outside)"
            : "";
}
