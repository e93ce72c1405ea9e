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
                    Judged: Judged(reading, [.. required.Distinct().Order()], criterion, context)
                )
            )
            .ToImmutableArray();
        var verdict = InEveryReading.Of(readings.Select(item => VerdictOf(item.Judged)));
        var (reading, (levels, together)) = InEveryReading.Deciding(
            readings,
            item => VerdictOf(item.Judged),
            item =>
                -item
                    .Judged.Levels.Select(level => level.ChangedIfMoved)
                    .Append(item.Judged.Together?.ChangedIfMoved ?? 0)
                    .Max()
        );
        var worst = WorstLevel.Of(levels, level => level.Verdict);
        var reason =
            together is not null && WorstOf(worst?.Verdict, together.Verdict) != worst?.Verdict
                ? together.Reason
            : worst is { Verdict: Verdict.Met } && together is not null ? together.Reason
            : worst is { Verdict: Verdict.Met } && levels.Length > 1
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
            Together = together,
        };
    }

    private static Verdict VerdictOf(
        (ImmutableArray<LevelReclassification> Levels, SidesTogether? Together) judged
    )
    {
        var ofLevels = WorstLevel.Of(judged.Levels, level => level.Verdict)?.Verdict;
        return judged.Together is { } together
            ? WorstOf(ofLevels, together.Verdict)
            : ofLevels ?? Verdict.Inconclusive;
    }

    private static Verdict WorstOf(Verdict? one, Verdict other) =>
        one is null ? Verdict.Inconclusive
        : one == Verdict.NotMet || other == Verdict.NotMet ? Verdict.NotMet
        : one == Verdict.Inconclusive || other == Verdict.Inconclusive ? Verdict.Inconclusive
        : Verdict.Met;

    private static (ImmutableArray<LevelReclassification> Levels, SidesTogether? Together) Judged(
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
        LevelReclassification Of(ImmutableArray<decimal> levels) =>
            WithRunsMoved(
                shift,
                counted,
                pairs => Judge(levels, criterion, pairs, reading, context)
            );
        return (
            [.. required.Select(level => IfCovered(Of([level]), counted, criterion, context))],
            criterion.LevelsTogether && required.Length > 1
                ? Together(required, Of(required))
                : null
        );
    }

    private static SidesTogether Together(
        ImmutableArray<decimal> levels,
        LevelReclassification any
    ) =>
        new(
            levels,
            any.Counted,
            any.Changed,
            any.ChangedIfMoved,
            any.ChangedSpecimens,
            any.Bounds,
            any.Verdict,
            any.Reason
        );

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
            .Select(pair => ResultRange.Of(pair.Baseline?.Result)?.Reaches(level.Level))
            .OfType<bool>()
            .ToImmutableArray();
        var above = sides.Count(isAbove => isAbove);
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

    /// <summary>Judges a level, or several of which a specimen counts once if it changes side of any.</summary>
    private static LevelReclassification Judge(
        ImmutableArray<decimal> levels,
        ReclassificationCriterion criterion,
        ImmutableArray<PairRecord> counted,
        PairReading reading,
        CellContext context
    )
    {
        decimal ZoneAt(decimal level) =>
            criterion.ZoneInUnit ?? UnclearZone.Usual(level, context.Analyte);
        SideMove WorstMove(PairRecord pair, Func<decimal, decimal> zoneAt) =>
            levels.Min(level =>
                SideMoves.Counted(SideMoves.Of(pair, level, zoneAt(level)), criterion.Direction)
            );
        var moves = counted
            .GroupBy(pair => pair.Subject)
            .Select(draws =>
                draws
                    .Select(pair =>
                        (
                            pair.Specimen,
                            Move: reading.WithoutValueAtCollection.Contains(pair.Specimen)
                                ? SideMove.Undecidable
                                : WorstMove(pair, ZoneAt)
                        )
                    )
                    .MinBy(item => item.Move)
            )
            .ToImmutableArray();
        int Number(SideMove move) => moves.Count(item => item.Move == move);
        var (countedUp, countedDown) = (Number(SideMove.Up), Number(SideMove.Down));
        var (failed, open) = (Number(SideMove.Failed), Number(SideMove.Undecidable));
        var changed = countedUp + countedDown + failed + open;
        var at = new LevelInUnit(levels[0], context.Analyte.ShownUnit);
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
            levels[0],
            moves.Length,
            criterion.Direction == SideDirection.Down ? Number(SideMove.OtherWay) : countedUp,
            criterion.Direction == SideDirection.Up ? Number(SideMove.OtherWay) : countedDown,
            failed,
            open,
            ExpectedChanges.Number(
                counted.RemoveAll(pair =>
                    levels.All(level => !SideMoves.CanCount(pair, level, criterion.Direction))
                ),
                levels,
                context
            ),
            [
                .. moves
                    .Where(item => item.Move is not (SideMove.OtherWay or SideMove.Stayed))
                    .Select(item => item.Specimen),
            ],
            ShareKept.Bounds(changed, moves.Length, criterion.ConfidenceLevel),
            verdict,
            levels.Length > 1
                ? new ChangesTogetherReason(criterion.SharePercentMaximum, levels, at.Unit, verdict)
                {
                    Direction = criterion.Direction,
                }
                : verdict switch
                {
                    Verdict.Met => new ChangesFewReason(
                        criterion.SharePercentMaximum,
                        levels,
                        at.Unit
                    )
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
            Zone = ZoneAt(levels[0]),
            OnOtherSide = counted.Count(pair =>
                WorstMove(pair, _ => 0) is SideMove.Up or SideMove.Down
            ),
        };
    }
}
