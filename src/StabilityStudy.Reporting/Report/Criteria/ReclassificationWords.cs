using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on changes of side.</summary>
internal sealed record ReclassificationWords(ReclassificationResult Result, SequenceNames Names)
    : ICriterionWords
{
    public static CriterionRuleWords OfRule(ReclassificationCriterion criterion) =>
        new(
            $"at every level the exact one-sided {NumberText.Percent(criterion.ConfidenceLevel)} upper bound of the share of specimens{Near(criterion)} that clearly {Move(criterion.Direction)} it is at most {NumberText.Plain(criterion.SharePercentMaximum)} %, also with every change moved (see below); a change is clear when one of the two results lies further from the level than {(criterion.ZoneInUnit is { } zone ? NumberText.Plain(zone) + " in the unit" : "imprecision explains, the smallest reporting step of at least 1.96 × √2 × CV × level")}; a result at the level is on its upper side.{(criterion.LevelsTogether ? " The same holds for the share of specimens that do so at any of the levels, each counted once." : "")} It asks for little: a mean and each specimen carry the claim.",
            $"at any level{(criterion.LevelsTogether ? ", or at all together," : "")} the one-sided lower bound is above it, even with every undecidable specimen counted as unchanged."
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
        $"At most {NumberText.Percent(Result.LargestShare)} of specimens clearly {Move(Direction)} {(Result.Together is null ? "" : "any of ")}{CriterionWords.Levels(Result.Levels.Select(item => item.Level), Names)}{(Result.Together is null ? "" : ", each specimen counted once")}, by the exact one-sided {NumberText.Percent(Result.ConfidenceLevel)} upper bound.";

    /// <summary>"60 s: 4 of 40 (≤ 21.4 %)", with the upper bound that was held to the largest share.</summary>
    public string DecidingFigure =>
        string.Join(
            "; ",
            Result
                .Levels.Select(level =>
                    DecidedBy(
                        CriterionWords.Levels([level.Level], Names),
                        level.Changed,
                        level.Counted,
                        level.Bounds
                    )
                )
                .Concat(
                    Result.Together is { } any
                        ? [DecidedBy("any of them", any.Changed, any.Counted, any.Bounds)]
                        : []
                )
        );

    private string DecidedBy(
        string what,
        int changed,
        int counted,
        Estimate<ProportionBounds> found
    ) =>
        $"{what}: {NumberText.Count(changed)} of {NumberText.Count(counted)}{(found.TryGet(out var bounds) ? $" (≤\u00A0{BoundWords.Upper(bounds, Result.LargestShare)})" : "")}";

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            .. Result.Levels.Select(level => new CriterionFigure(
                true,
                $"{NumberText.Count(level.Changed)} of {NumberText.Count(level.Counted)} clearly {(level.Direction == SideDirection.Both ? "change side of" : Move(level.Direction))} {NumberText.Plain(level.Level)} ({Bound(level.Bounds, level.Verdict)}); {NumberText.Count(level.OnOtherSide)} at all",
                $"at most {NumberText.Percent(Result.LargestShare)}",
                level.Verdict
            )),
            .. Result.Together is { } any
                ?
                [
                    new CriterionFigure(
                        true,
                        $"{NumberText.Count(any.Changed)} of {NumberText.Count(any.Counted)} clearly {(Direction == SideDirection.Both ? "change side of" : Move(Direction))} any of them ({Bound(any.Bounds, any.Verdict)})",
                        $"at most {NumberText.Percent(Result.LargestShare)}",
                        any.Verdict
                    ),
                ]
                : ImmutableArray<CriterionFigure>.Empty,
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
    private string Bound(Estimate<ProportionBounds> bounds, Verdict verdict) =>
        !bounds.TryGet(out var found) ? "none counted"
        : verdict == Verdict.NotMet && found.OneSidedLower > Result.LargestShare
            ? "≥\u00A0" + BoundWords.Lower(found, Result.LargestShare)
        : "≤\u00A0" + BoundWords.Upper(found, Result.LargestShare);
}
