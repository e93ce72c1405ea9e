using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on changes of side.</summary>
internal sealed record ReclassificationWords(ReclassificationResult Result, SequenceNames Names)
    : ICriterionWords
{
    public static CriterionRuleWords OfRule(ReclassificationCriterion criterion) =>
        new(
            $"at every level the exact one-sided {NumberText.Percent(criterion.ConfidenceLevel)} upper bound of the share of specimens{Near(criterion)} that clearly {Move(criterion.Direction)} it is at most {NumberText.Plain(criterion.SharePercentMaximum)} %, also with every change moved (see below); a change is clear when one of the two results lies further from the level than {(criterion.ZoneInUnit is { } zone ? NumberText.Plain(zone) + " in the unit" : "imprecision explains, the smallest reporting step of at least 1.96 × √2 × CV × level")}; a result at the level is on its upper side. It asks for little: a mean and each specimen carry the claim.",
            "at any level the one-sided lower bound is above it, even with every undecidable specimen counted as unchanged."
        );

    /// <summary>"change the side of" a level, or "fall below" and "rise to or above" it where only these count.</summary>
    public static string Move(SideDirection direction) =>
        direction switch
        {
            SideDirection.Both => "change the side of",
            SideDirection.Down => "fall below",
            SideDirection.Up => "rise to or above",
        };

    private static string Near(ReclassificationCriterion criterion) =>
        criterion.Near is { } near
            ? $" with baselines from {NumberText.Plain(near.Lowest)} to {NumberText.Plain(near.Highest)} in the unit, of which there are at least {NumberText.Count(near.SpecimensMinimum)},"
            : "";

    private SideDirection Direction =>
        Result.Levels.Select(level => level.Direction).FirstOrDefault();

    public string Requirement =>
        $"At most {NumberText.Percent(Result.LargestShare)} of specimens clearly {Move(Direction)} {CriterionWords.Levels(Result.Levels.Select(item => item.Level), Names)}, by the exact one-sided {NumberText.Percent(Result.ConfidenceLevel)} upper bound.";

    /// <summary>"60 s: 4 of 40 (≤ 21.4 %)", with the upper bound that was held to the largest share.</summary>
    public string DecidingFigure =>
        string.Join(
            "; ",
            Result.Levels.Select(level =>
                $"{CriterionWords.Levels([level.Level], Names)}: {NumberText.Count(level.Changed)} of {NumberText.Count(level.Counted)}{(level.Bounds.TryGet(out var bounds) ? $" (≤\u00A0{BoundWords.Upper(bounds, Result.LargestShare)})" : "")}"
            )
        );

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            .. Result.Levels.Select(level => new CriterionFigure(
                true,
                $"{NumberText.Count(level.Changed)} of {NumberText.Count(level.Counted)} clearly {(level.Direction == SideDirection.Both ? "change side of" : Move(level.Direction))} {NumberText.Plain(level.Level)} ({Bound(level)}); {NumberText.Count(level.OnOtherSide)} at all",
                $"at most {NumberText.Percent(Result.LargestShare)}",
                level.Verdict
            )),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        CriterionWords.ReasonWith(withFigures ? Figures(true) : [], Result);

    public IEnumerable<Row> EstimateRows => [];

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) =>
        [
            ReclassificationTable.Of(Result, Names),
            .. SideChangePlot.Of(Result, cell, Names, axes) is { } plot
                ? [plot]
                : ImmutableArray<Block>.Empty,
        ];

    public IEnumerable<Block> ByHand(Cell cell) => [];

    /// <summary>The share that changes: the bounds are the other way round.</summary>
    private string Bound(LevelReclassification level) =>
        !level.Bounds.TryGet(out var found) ? "none counted"
        : level.Verdict == Verdict.NotMet && found.OneSidedLower > Result.LargestShare
            ? "≥\u00A0" + BoundWords.Lower(found, Result.LargestShare)
        : "≤\u00A0" + BoundWords.Upper(found, Result.LargestShare);
}
