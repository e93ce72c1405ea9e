using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>
/// Decides a reclassification criterion: at each level, met when the exact one-sided upper bound of the share that changes
/// side, failed and undecidable ones counted as changed, is at most the largest share; not met when the lower bound is
/// above it with those counted as unchanged; else inconclusive. A person counts once, as the worst of the draws.
/// </summary>
internal static class ReclassificationEvaluation
{
    private enum Move
    {
        Up,
        Down,
        Failed,
        Undecidable,
        Stayed,
    }

    public static ReclassificationResult Evaluate(
        ReclassificationCriterion criterion,
        CellEvidence cell
    )
    {
        var (data, pairs, context) = cell;
        var counted = pairs.Where(pair => pair.CountsForAgreement).ToImmutableArray();
        var shift = RunShift.Of(counted, data.SameRun, criterion.ConfidenceLevel);
        var required = criterion.Levels.IsEmpty ? context.Analyte.DecisionLevels : criterion.Levels;
        ImmutableArray<LevelReclassification> levels =
        [
            .. required
                .Distinct()
                .Order()
                .Select(level =>
                    IfCovered(
                        IfRunsMoved(
                            Judge(level, criterion, counted, context),
                            shift,
                            moved => Judge(level, criterion, moved, context),
                            counted
                        ),
                        counted,
                        context
                    )
                ),
        ];
        var worst = WorstLevel.Of(levels, level => level.Verdict);
        var reason =
            worst is { Verdict: Verdict.Met } && levels.Length > 1
                ? new ChangesFewReason(
                    criterion.SharePercentMaximum,
                    [.. levels.Select(level => level.Level)],
                    context.Analyte.ShownUnit
                )
                : worst?.Reason ?? WorstLevel.None;
        var verdict = worst?.Verdict ?? Verdict.Inconclusive;
        var fewDays = verdict == Verdict.Met ? cell.FewDaysOfShare(counted) : null;
        return new ReclassificationResult(
            criterion.Id,
            fewDays is null ? verdict : Verdict.Inconclusive,
            fewDays is null ? [reason] : [fewDays, reason],
            criterion.ConfidenceLevel,
            (double)(criterion.SharePercentMaximum / 100),
            levels
        );
    }

    /// <summary>Where no baseline is near a level none can change its side, which shows nothing.</summary>
    private static LevelReclassification IfCovered(
        LevelReclassification level,
        ImmutableArray<PairRecord> counted,
        CellContext context
    )
    {
        var sides = counted
            .Select(pair => ResultRange.Of(pair.Baseline?.Result)?.Reaches([level.Level]))
            .OfType<int>()
            .ToImmutableArray();
        var above = sides.Count(side => side > 0);
        var below = sides.Length - above;
        return
            level.Verdict != Verdict.Met
            || (
                below >= LevelCoverage.FewestOnEitherSide
                && above >= LevelCoverage.FewestOnEitherSide
            )
            ? level
            : level with
            {
                Verdict = Verdict.Inconclusive,
                Reason = new LevelOutsideCoverageReason(
                    new(level.Level, context.Analyte.ShownUnit),
                    new FewBaselines(below, above)
                ),
            };
    }

    /// <summary>A level that is met stays so only if it is with every change moved by what the runs could have added.</summary>
    private static LevelReclassification IfRunsMoved(
        LevelReclassification level,
        RunShift? shift,
        Func<ImmutableArray<PairRecord>, LevelReclassification> judge,
        ImmutableArray<PairRecord> counted
    )
    {
        if (shift is null || level.Verdict != Verdict.Met)
        {
            return level;
        }

        var moved = shift.Moved(counted).Select(judge).ToImmutableArray();
        var stated = level with
        {
            ChangedIfMoved = Math.Max(level.ChangedIfMoved, moved.Max(item => item.ChangedIfMoved)),
        };
        return moved.All(item => item.Verdict == Verdict.Met)
            ? stated
            : stated with
            {
                Verdict = Verdict.Inconclusive,
                Reason = new OpenIfRunsMovedReason(shift.Percent, new SidesOpenIfMoved()),
            };
    }

    private static LevelReclassification Judge(
        decimal level,
        ReclassificationCriterion criterion,
        ImmutableArray<PairRecord> counted,
        CellContext context
    )
    {
        var moves = counted
            .GroupBy(pair => pair.Subject)
            .Select(draws =>
                draws
                    .Select(pair => (pair.Specimen, Move: MoveOf(pair, level)))
                    .MinBy(item => item.Move)
            )
            .ToImmutableArray();
        int Number(Move move) => moves.Count(item => item.Move == move);
        var (up, down) = (Number(Move.Up), Number(Move.Down));
        var (failed, open) = (Number(Move.Failed), Number(Move.Undecidable));
        var changed = up + down + failed + open;
        var at = new LevelInUnit(level, context.Analyte.ShownUnit);
        var verdict = moves.IsEmpty
            ? Verdict.Inconclusive
            : ShareKept.Judge(
                moves.Length,
                changed,
                up + down,
                100 - criterion.SharePercentMaximum,
                criterion.ConfidenceLevel
            );
        return new LevelReclassification(
            level,
            moves.Length,
            up,
            down,
            failed,
            open,
            ExpectedChanges.Number(counted, [level], context),
            [.. moves.Where(item => item.Move != Move.Stayed).Select(item => item.Specimen)],
            ShareKept.Bounds(changed, moves.Length, criterion.ConfidenceLevel),
            verdict,
            verdict switch
            {
                Verdict.Met => new ChangesFewReason(
                    criterion.SharePercentMaximum,
                    [level],
                    at.Unit
                ),
                Verdict.NotMet => new ChangesManyReason(criterion.SharePercentMaximum, at),
                Verdict.Inconclusive => new ChangesOpenReason(criterion.SharePercentMaximum, at),
            }
        );
    }

    private static Move MoveOf(PairRecord pair, decimal level)
    {
        if (pair.Status == PairStatus.Failed || pair.IsUnexplained)
        {
            return pair.IsUnexplained ? Move.Undecidable : Move.Failed;
        }

        var before = ResultRange.Of(pair.Baseline?.Result)?.Reaches([level]);
        var after = ResultRange.Of(pair.Delayed?.Result)?.Reaches([level]);
        return (before, after) switch
        {
            ({ } x, { } y) => x == y ? Move.Stayed
            : x < y ? Move.Up
            : Move.Down,
            _ => pair.Delayed?.Result is MissingResult ? Move.Failed : Move.Undecidable,
        };
    }
}
