using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>
/// Decides a decision-level criterion: at every required level the interval of the change that weighted Deming
/// regression predicts, the widest over specimens, days, runs and persons and lengthened for skewness, lies strictly inside the allowance there, in every reading. A level
/// that the baselines do not cover is left open, and so is one where the specimens of one side, with a step at the level, do not show it.
/// </summary>
internal static class DecisionLevelEvaluation
{
    /// <summary>The change that a line predicts at levels: pairs, ratio of error variances, levels, confidence, and the ways in which pairs share an error.</summary>
    public delegate ImmutableArray<Estimate<BiasAtLevel>> Prediction(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        ImmutableArray<double> levels,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    );

    public static DecisionLevelResult Evaluate(
        DecisionLevelCriterion criterion,
        Limit limit,
        CellEvidence cell
    ) => Evaluate(criterion, limit, cell, WeightedDemingRegression.BiasesAt);

    /// <summary>The same with another line, to see whether the choice of the line decides.</summary>
    public static DecisionLevelResult Evaluate(
        DecisionLevelCriterion criterion,
        Limit limit,
        CellEvidence cell,
        Prediction predict
    )
    {
        var context = cell.Context;
        var required = Required(criterion, context);
        var readings = cell
            .Readings.Select(reading =>
                (
                    reading.Kind,
                    Levels: Judge(
                        required,
                        criterion.ConfidenceLevel,
                        limit,
                        reading.Data,
                        context,
                        predict
                    )
                )
            )
            .ToImmutableArray();
        var deciding = InEveryReading.Deciding(
            readings,
            item => VerdictOf(item.Levels),
            item => item.Levels.Select(RoomOf).DefaultIfEmpty().Min()
        );
        ImmutableArray<VerdictReason> doubts =
        [
            .. new VerdictReason?[]
            {
                cell.FewClustersOfMean,
                BiasDoubts.OfUncounted(cell.Uncounted),
            }.OfType<VerdictReason>(),
        ];
        var worst = WorstLevel.Of(deciding.Levels, level => level.Verdict);
        return new DecisionLevelResult(
            criterion.Id,
            limit,
            doubts.IsEmpty
                ? InEveryReading.Of(readings.Select(item => VerdictOf(item.Levels)))
                : Verdict.Inconclusive,
            doubts.Add(worst?.Reason ?? WorstLevel.None),
            criterion.ConfidenceLevel,
            deciding.Levels
        )
        {
            Reading = deciding.Kind,
        };
    }

    /// <summary>
    /// Whether it is met, as <see cref="Evaluate(DecisionLevelCriterion, Limit, CellEvidence)"/> says; the many fits of an interval are made only where nothing else keeps it from being met: a level that
    /// the baselines do not cover, one side of it beyond the allowance, or a predicted change beyond it, around which every interval lies.
    /// </summary>
    public static bool IsMet(DecisionLevelCriterion criterion, Limit limit, CellEvidence cell)
    {
        var levels = Required(criterion, cell.Context);
        return !levels.IsEmpty
            && cell.FewClustersOfMean is null
            && BiasDoubts.OfUncounted(cell.Uncounted) is null
            && cell.Readings.All(reading =>
                IsMet(levels, criterion.ConfidenceLevel, limit, reading.Data, cell.Context)
            );
    }

    private static bool IsMet(
        ImmutableArray<decimal> levels,
        double confidenceLevel,
        Limit limit,
        CellData data,
        CellContext context
    )
    {
        var (x, y) = (data.Pairs.X, data.Pairs.Y);
        var ratio = (double)context.Analyte.ErrorVarianceRatio;
        var predicted = WeightedDemingRegression.PredictedBiases(
            x.AsSpan(),
            y.AsSpan(),
            ratio,
            [.. levels.Select(level => (double)level)]
        );
        var beside = new List<Estimate<ChangeBesideLevel>>();
        for (var i = 0; i < levels.Length; i++)
        {
            var (level, allowed) = (levels[i], AllowedAt(limit, levels[i]));
            if (
                predicted.IsEmpty
                || !(Math.Abs(predicted[i]) < allowed)
                || LevelCoverage.Of(level, data, context.Analyte).Gap is not null
            )
            {
                return false;
            }

            beside.Add(ChangeBesideLevel.WorseSide((double)level, data, confidenceLevel));
            if (!beside[i].TryGet(out var side) || !IsInside(side, allowed, level))
            {
                return false;
            }
        }

        var changes = WeightedDemingRegression.BiasesAt(
            x.AsSpan(),
            y.AsSpan(),
            ratio,
            [.. levels.Select(level => (double)level)],
            confidenceLevel,
            data.Errors.Clusterings
        );
        return levels
            .Select(
                (level, i) =>
                    Judge(
                        new LevelInUnit(level, context.Analyte.ShownUnit),
                        Lengthened(changes[i], data, limit, confidenceLevel),
                        beside[i],
                        AllowedAt(limit, level),
                        data
                    ).Verdict
            )
            .All(verdict => verdict == Verdict.Met);
    }

    private static ImmutableArray<decimal> Required(
        DecisionLevelCriterion criterion,
        CellContext context
    ) =>
        [
            .. (criterion.Levels.IsEmpty ? context.Analyte.DecisionLevels : criterion.Levels)
                .Distinct()
                .Order(),
        ];

    private static double AllowedAt(Limit limit, decimal level) =>
        ChangeOnScale.AllowanceOf(limit).At((double)level);

    private static bool IsInside(ChangeBesideLevel side, double allowed, decimal level) =>
        side.Furthest < 100 * allowed / (double)level;

    private static Verdict VerdictOf(ImmutableArray<LevelResult> levels) =>
        WorstLevel.Of(levels, level => level.Verdict)?.Verdict ?? Verdict.Inconclusive;

    /// <summary>How far the interval at a level is inside its allowance, as a share of it.</summary>
    private static double RoomOf(LevelResult level) =>
        level.Change.TryGet(out var change)
            ? 1 - (Math.Max(change.Upper, -change.Lower) / level.Allowed)
            : double.NegativeInfinity;

    /// <summary>The line is fitted once for all levels that the baselines cover.</summary>
    private static ImmutableArray<LevelResult> Judge(
        ImmutableArray<decimal> levels,
        double confidenceLevel,
        Limit limit,
        CellData data,
        CellContext context,
        Prediction predict
    )
    {
        var coverages = levels
            .Select(level => LevelCoverage.Of(level, data, context.Analyte))
            .ToImmutableArray();
        ImmutableArray<double> covered =
        [
            .. levels.Where((_, i) => coverages[i].Gap is null).Select(level => (double)level),
        ];
        var predicted = covered.IsEmpty
            ? []
            : predict(
                data.Pairs.X.AsSpan(),
                data.Pairs.Y.AsSpan(),
                (double)context.Analyte.ErrorVarianceRatio,
                covered,
                confidenceLevel,
                data.Errors.Clusterings
            );
        var refused = Estimate.Refused<BiasAtLevel>(
            new NotComputable(Refusal.LevelOutsideCoverage)
        );
        return
        [
            .. levels.Select(
                (level, i) =>
                    Judge(
                        level,
                        coverages[i],
                        coverages[i].Gap is null
                            ? predicted[covered.IndexOf((double)level)]
                            : refused,
                        confidenceLevel,
                        limit,
                        data,
                        context
                    )
            ),
        ];
    }

    private static LevelResult Judge(
        decimal level,
        LevelCoverage coverage,
        Estimate<BiasAtLevel> change,
        double confidenceLevel,
        Limit limit,
        CellData data,
        CellContext context
    )
    {
        var allowed = AllowedAt(limit, level);
        var at = new LevelInUnit(level, context.Analyte.ShownUnit);
        var beside = change.Value is null
            ? change.RefusedAs<ChangeBesideLevel>()
            : ChangeBesideLevel.WorseSide((double)level, data, confidenceLevel);
        var bias = Lengthened(change, data, limit, confidenceLevel);
        var (verdict, reason) = coverage.Gap is { } gap
            ? (Verdict.Inconclusive, new LevelOutsideCoverageReason(at, gap))
            : Judge(at, bias, beside, allowed, data);
        return new(level, coverage.Below, coverage.Above, allowed, bias, beside, verdict, reason);
    }

    /// <summary>Changes as shares of the allowance show toward which limit they are skewed.</summary>
    private static Estimate<BiasAtLevel> Lengthened(
        Estimate<BiasAtLevel> change,
        CellData data,
        Limit limit,
        double confidenceLevel
    ) =>
        change.TryGet(out var found)
        && ChangeOnScale.Of(data, ChangeScale.Share, limit).TryGet(out var shares)
            ? Estimate.Of(
                found.Lengthened(SkewnessStretch.Compute(shares.Values.AsSpan(), confidenceLevel))
            )
            : change;

    private static (Verdict Verdict, VerdictReason Reason) Judge(
        LevelInUnit at,
        Estimate<BiasAtLevel> change,
        Estimate<ChangeBesideLevel> beside,
        double allowed,
        CellData data
    )
    {
        if (!change.TryGet(out var bias))
        {
            return (Verdict.Inconclusive, new NotComputableReason(change.NotComputable!));
        }

        if (data.Pairs.AreOnOneLine())
        {
            return (Verdict.Inconclusive, new PairsOnOneLineReason());
        }

        var line = IntervalVerdict.Of(
            bias.Lower,
            bias.Upper,
            -allowed,
            allowed,
            new ChangeAtLevelFigure(at)
        );
        if (line.Verdict != Verdict.Met)
        {
            return line;
        }

        return !beside.TryGet(out var side)
                ? (Verdict.Inconclusive, new NotComputableReason(beside.NotComputable!))
            : IsInside(side, allowed, at.Level) ? line
            : (Verdict.Inconclusive, new OneSideOfLevelReason(at, side));
    }
}
