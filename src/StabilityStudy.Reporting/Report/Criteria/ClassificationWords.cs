using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on classes.</summary>
internal sealed record ClassificationWords(ClassificationResult Result) : ICriterionWords
{
    public static CriterionRuleWords OfRule(ClassificationCriterion criterion) =>
        new(
            $"the exact one-sided {NumberText.Percent(criterion.ConfidenceLevel)} lower bound of the share of specimens that keep their class reaches {NumberText.Plain(criterion.SharePercentMinimum)} %{(criterion.Cutoffs.IsEmpty ? ". Words show nothing of what a run adds to all results of a day; the required collection days stand against that" : ", also with every change moved (see below)")}.",
            "the one-sided upper bound is below it, even with every undecidable specimen counted as kept.",
            [
                .. criterion.WeakPositivesMinimum == 0
                    ? ImmutableArray<string>.Empty
                    :
                    [
                        $"Classes: inconclusive with fewer than {NumberText.Count(criterion.WeakPositivesMinimum)} specimens whose baseline is in the class just above the lowest.",
                    ],
            ]
        );

    public string Requirement =>
        $"At least {NumberText.Percent(Result.RequiredShare)} of specimens keep their class, by the exact one-sided {NumberText.Percent(Result.ConfidenceLevel)} lower bound, with at least {NumberText.Count(Result.WeakPositivesMinimum)} weak positives.";

    public string DecidingFigure =>
        Result.Bounds.TryGet(out var bounds)
            ? $"{NumberText.Count(Result.Kept)} of {NumberText.Count(Result.Counted)} ({BoundWords.Lower(bounds, Result.RequiredShare)})"
            : "none counted";

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            new(
                true,
                $"{NumberText.Count(Result.Kept)} of {NumberText.Count(Result.Counted)} keep class ({(Result.Bounds.TryGet(out var found) ? BoundWords.Of(found, Result.RequiredShare, Result.Verdict) : "none counted")})",
                NumberText.Percent(Result.RequiredShare),
                Result.Verdict
            ),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        CriterionWords.ReasonWith(withFigures ? Figures(true) : [], Result);

    public IEnumerable<Row> EstimateRows => [];

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) => [ClassificationTable.Of(Result)];

    public IEnumerable<Block> ByHand(Cell cell) => [];
}
