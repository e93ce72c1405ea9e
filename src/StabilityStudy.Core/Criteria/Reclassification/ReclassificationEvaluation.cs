using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>
/// Decides a reclassification criterion: at each level, met when the exact one-sided upper bound of the share that clearly changes
/// side, failed and undecidable ones counted as changed, is at most the largest share, in every reading and with every change moved by what the runs could have added; not met when the lower bound is
/// above it with undecidable ones counted as unchanged, in every reading and with half of that; else inconclusive. A person counts once, as the worst of the draws.
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
        var counted = reading.Pairs.Where(pair => pair.CountsForAgreement).ToImmutableArray();
        var shift = RunShift.Of(counted, criterion.ConfidenceLevel);
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
                    context
                )
            ),
        ];
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
                                : MoveOf(pair, level, zone)
                        )
                    )
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
        )
        {
            Zone = zone,
            OnOtherSide = counted.Count(pair => MoveOf(pair, level, 0) is Move.Up or Move.Down),
        };
    }

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
