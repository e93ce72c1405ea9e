using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>
/// Decides a reclassification criterion: at each level, met when the exact one-sided upper bound of the share that clearly changes
/// side, failed and undecidable ones counted as changed, is at most the largest share, in every reading and with every change moved by what the runs could have added; not met when the lower bound is
/// above it with undecidable ones counted as unchanged, in every reading and with half of that; else inconclusive. A person counts once, as the worst of the draws.
/// A criterion may count the changes to one side only, and only specimens whose baseline is near; with fewer of these than planned it is not met.
/// </summary>
internal static class ReclassificationEvaluation
{
    private enum Move
    {
        Up,
        Down,
        Failed,
        Undecidable,

        /// <summary>Clearly to the side that the criterion does not count.</summary>
        OtherWay,
        Stayed,
    }

    public static ReclassificationResult Evaluate(
        ReclassificationCriterion criterion,
        CellEvidence cell
    )
    {
        var context = cell.Context;
        var required = criterion.Levels.IsEmpty ? context.Analyte.DecisionLevels : criterion.Levels;
        var readings = cell
            .Readings.Select(reading =>
                (
                    reading.Kind,
                    Levels: Levels(reading, [.. required.Distinct().Order()], criterion, context)
                )
            )
            .ToImmutableArray();
        var verdict = InEveryReading.Of(readings.Select(item => VerdictOf(item.Levels)));
        var (reading, levels) = InEveryReading.Deciding(
            readings,
            item => VerdictOf(item.Levels),
            item =>
                -item.Levels.Select(level => (double)level.ChangedIfMoved).DefaultIfEmpty().Max()
        );
        var worst = WorstLevel.Of(levels, level => level.Verdict);
        var reason =
            worst is { Verdict: Verdict.Met } && levels.Length > 1
                ? new ChangesFewReason(
                    criterion.SharePercentMaximum,
                    [.. levels.Select(level => level.Level)],
                    context.Analyte.ShownUnit
                )
                {
                    Direction = criterion.Direction,
                }
                : worst?.Reason ?? WorstLevel.None;
        var fewClusters = verdict == Verdict.Met ? cell.FewClustersOfShare : null;
        return new ReclassificationResult(
            criterion.Id,
            fewClusters is null ? verdict : Verdict.Inconclusive,
            fewClusters is null ? [reason] : [fewClusters, reason],
            criterion.ConfidenceLevel,
            (double)(criterion.SharePercentMaximum / 100),
            levels
        )
        {
            Reading = reading,
        };
    }

    private static Verdict VerdictOf(ImmutableArray<LevelReclassification> levels) =>
        WorstLevel.Of(levels, level => level.Verdict)?.Verdict ?? Verdict.Inconclusive;

    private static ImmutableArray<LevelReclassification> Levels(
        PairReading reading,
        ImmutableArray<decimal> required,
        ReclassificationCriterion criterion,
        CellContext context
    )
    {
        var all = reading.Pairs.Where(pair => pair.CountsForAgreement).ToImmutableArray();
        var shift = RunShift.Of(all, criterion.ConfidenceLevel, reading.Data);
        var counted = criterion.Near is { } near
            ? all.RemoveAll(pair => near.Excludes(pair.Baseline?.Result))
            : all;
        return
        [
            .. required.Select(level =>
                IfCovered(
                    WithRunsMoved(
                        shift,
                        counted,
                        pairs => Judge(level, criterion, pairs, reading, context)
                    ),
                    counted,
                    criterion,
                    context
                )
            ),
        ];
    }

    /// <summary>Where no baseline is near a level none can change its side, which shows nothing.</summary>
    private static LevelReclassification IfCovered(
        LevelReclassification level,
        ImmutableArray<PairRecord> counted,
        ReclassificationCriterion criterion,
        CellContext context
    )
    {
        if (
            criterion.Near is { } near
            && level is { Verdict: Verdict.Met, Counted: var found }
            && found < near.SpecimensMinimum
        )
        {
            return level with
            {
                Verdict = Verdict.Inconclusive,
                Reason = new TooFewNearReason(
                    found,
                    near.SpecimensMinimum,
                    near.Lowest,
                    near.Highest,
                    context.Analyte.ShownUnit
                ),
            };
        }

        var sides = counted
            .Select(pair => ResultRange.Of(pair.Baseline?.Result)?.Reaches([level.Level]))
            .OfType<int>()
            .ToImmutableArray();
        var above = sides.Count(side => side > 0);
        var below = sides.Length - above;

        // Near a level on one side alone nobody is asked for on the other.
        var onOneSide = criterion is { Near: not null, Direction: not SideDirection.Both };
        return
            level.Verdict != Verdict.Met
            || (
                (
                    below >= LevelCoverage.FewestOnEitherSide
                    || (onOneSide && criterion.Direction == SideDirection.Down)
                )
                && (
                    above >= LevelCoverage.FewestOnEitherSide
                    || (onOneSide && criterion.Direction == SideDirection.Up)
                )
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

    /// <summary>A level that is met stays so only if it is with every change moved by what the runs could have added; one that is not met, with half of that.</summary>
    private static LevelReclassification WithRunsMoved(
        RunShift shift,
        ImmutableArray<PairRecord> counted,
        Func<ImmutableArray<PairRecord>, LevelReclassification> judge
    )
    {
        var moved = shift.Moved(counted).Select(judge).ToImmutableArray();
        var level = moved[0] with { ChangedIfMoved = moved.Max(item => item.Changed) };
        return level.Verdict switch
        {
            Verdict.Met when moved.Any(item => item.Verdict != Verdict.Met) => level with
            {
                Verdict = Verdict.Inconclusive,
                Reason = new OpenIfRunsMovedReason(shift.Percent, new SidesOpenIfMoved()),
            },
            Verdict.NotMet
                when shift
                    .MovedForRefusal(counted)
                    .Any(pairs => judge(pairs).Verdict != Verdict.NotMet) => level with
            {
                Verdict = Verdict.Inconclusive,
                Reason = new OpenIfRunsMovedReason(shift.PercentForRefusal, new SidesOpenIfMoved()),
            },
            Verdict.Met or Verdict.NotMet or Verdict.Inconclusive => level,
        };
    }

    private static LevelReclassification Judge(
        decimal level,
        ReclassificationCriterion criterion,
        ImmutableArray<PairRecord> counted,
        PairReading reading,
        CellContext context
    )
    {
        var zone = criterion.ZoneInUnit ?? UnclearZone.Usual(level, context.Analyte);
        var moves = counted
            .GroupBy(pair => pair.Subject)
            .Select(draws =>
                draws
                    .Select(pair =>
                        (
                            pair.Specimen,
                            Move: reading.WithoutValueAtCollection.Contains(pair.Specimen)
                                ? Move.Undecidable
                                : Counted(MoveOf(pair, level, zone), criterion.Direction)
                        )
                    )
                    .MinBy(item => item.Move)
            )
            .ToImmutableArray();
        int Number(Move move) => moves.Count(item => item.Move == move);
        var (countedUp, countedDown) = (Number(Move.Up), Number(Move.Down));
        var (failed, open) = (Number(Move.Failed), Number(Move.Undecidable));
        var changed = countedUp + countedDown + failed + open;
        var at = new LevelInUnit(level, context.Analyte.ShownUnit);
        var verdict = moves.IsEmpty
            ? Verdict.Inconclusive
            : ShareKept.Judge(
                moves.Length,
                changed,
                countedUp + countedDown,
                100 - criterion.SharePercentMaximum,
                criterion.ConfidenceLevel
            );
        return new LevelReclassification(
            level,
            moves.Length,
            criterion.Direction == SideDirection.Down ? Number(Move.OtherWay) : countedUp,
            criterion.Direction == SideDirection.Up ? Number(Move.OtherWay) : countedDown,
            failed,
            open,
            ExpectedChanges.Number(
                counted.RemoveAll(pair => !CanCount(pair, level, criterion.Direction)),
                [level],
                context
            ),
            [
                .. moves
                    .Where(item => item.Move is not (Move.OtherWay or Move.Stayed))
                    .Select(item => item.Specimen),
            ],
            ShareKept.Bounds(changed, moves.Length, criterion.ConfidenceLevel),
            verdict,
            verdict switch
            {
                Verdict.Met => new ChangesFewReason(criterion.SharePercentMaximum, [level], at.Unit)
                {
                    Direction = criterion.Direction,
                },
                Verdict.NotMet => new ChangesManyReason(criterion.SharePercentMaximum, at)
                {
                    Direction = criterion.Direction,
                },
                Verdict.Inconclusive => new ChangesOpenReason(criterion.SharePercentMaximum, at)
                {
                    Direction = criterion.Direction,
                },
            }
        )
        {
            Direction = criterion.Direction,
            Zone = zone,
            OnOtherSide = counted.Count(pair =>
                Counted(MoveOf(pair, level, 0), criterion.Direction) is Move.Up or Move.Down
            ),
        };
    }

    /// <summary>A clear change to the side that the criterion does not count is none of those that it counts.</summary>
    private static Move Counted(Move move, SideDirection direction) =>
        (move, direction) is (Move.Up, SideDirection.Down) or (Move.Down, SideDirection.Up)
            ? Move.OtherWay
            : move;

    /// <summary>Whether the baseline lies where a change that counts can begin.</summary>
    private static bool CanCount(PairRecord pair, decimal level, SideDirection direction) =>
        direction == SideDirection.Both
        || ResultRange.Of(pair.Baseline?.Result)?.Reaches([level])
            == (direction == SideDirection.Down ? 1 : 0);

    /// <summary>A change of side is clear when one of the results lies further from the level than the zone; of a result beyond what the method reports it is not known how far it lies, and it counts as clear.</summary>
    private static Move MoveOf(PairRecord pair, decimal level, decimal zone)
    {
        if (pair.Status == PairStatus.Failed || pair.IsLost)
        {
            return pair.IsLost ? Move.Undecidable : Move.Failed;
        }

        var (x, y) = (ResultRange.Of(pair.Baseline?.Result), ResultRange.Of(pair.Delayed?.Result));
        return (x?.Reaches([level]), y?.Reaches([level])) switch
        {
            ({ } before, { } after) => before == after
            || (
                pair.IsOfNumbers
                && Math.Abs(pair.Values().Baseline - level) <= zone
                && Math.Abs(pair.Values().Delayed - level) <= zone
                && zone > 0
            )
                ? Move.Stayed
            : before < after ? Move.Up
            : Move.Down,
            _ => pair.Delayed?.Result is MissingResult ? Move.Failed : Move.Undecidable,
        };
    }
}
