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
    /// <summary>The change that a line predicts at a level: pairs, ratio of error variances, level, confidence, and the ways in which pairs share an error.</summary>
    public delegate Estimate<BiasAtLevel> Prediction(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double level,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    );

    public static DecisionLevelResult Evaluate(
        DecisionLevelCriterion criterion,
        Limit limit,
        CellEvidence cell
    ) => Evaluate(criterion, limit, cell, WeightedDemingRegression.BiasAt);

    /// <summary>The same with another line, to see whether the choice of the line decides.</summary>
    public static DecisionLevelResult Evaluate(
        DecisionLevelCriterion criterion,
        Limit limit,
        CellEvidence cell,
        Prediction predict
    )
    {
        var context = cell.Context;
        var required = criterion.Levels.IsEmpty ? context.Analyte.DecisionLevels : criterion.Levels;
        var readings = cell
            .Readings.Select(reading =>
                (
                    reading.Kind,
                    Levels: required
                        .Distinct()
                        .Order()
                        .Select(level =>
                            Judge(
                                level,
                                criterion.ConfidenceLevel,
                                limit,
                                reading.Data,
                                context,
                                predict
                            )
                        )
                        .ToImmutableArray()
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

    private static Verdict VerdictOf(ImmutableArray<LevelResult> levels) =>
        WorstLevel.Of(levels, level => level.Verdict)?.Verdict ?? Verdict.Inconclusive;

    /// <summary>How far the interval at a level is inside its allowance, as a share of it.</summary>
    private static double RoomOf(LevelResult level) =>
        level.Change.TryGet(out var change)
            ? 1 - (Math.Max(change.Upper, -change.Lower) / level.Allowed)
            : double.NegativeInfinity;

    private static LevelResult Judge(
        decimal level,
        double confidenceLevel,
        Limit limit,
        CellData data,
        CellContext context,
        Prediction predict
    )
    {
        var coverage = LevelCoverage.Of(level, data, context.Analyte);
        var allowed = ChangeOnScale.AllowanceOf(limit).At((double)level);
        var at = new LevelInUnit(level, context.Analyte.ShownUnit);
        var refused = coverage.Gap is null ? null : new NotComputable(Refusal.LevelOutsideCoverage);
        var change = refused is null
            ? predict(
                data.Pairs.X.AsSpan(),
                data.Pairs.Y.AsSpan(),
                (double)context.Analyte.ErrorVarianceRatio,
                (double)level,
                confidenceLevel,
                data.Errors.Clusterings
            )
            : Estimate.Refused<BiasAtLevel>(refused);
        var beside = change.Value is null
            ? change.RefusedAs<ChangeBesideLevel>()
            : ChangeBesideLevel.WorseSide((double)level, data, confidenceLevel);
        // Changes as shares of the allowance show toward which limit they are skewed.
        var bias =
            change.TryGet(out var found)
            && ChangeOnScale.Of(data, ChangeScale.Share, limit).TryGet(out var shares)
                ? Estimate.Of(
                    found.Lengthened(
                        SkewnessStretch.Compute(shares.Values.AsSpan(), confidenceLevel)
                    )
                )
                : change;
        var (verdict, reason) = coverage.Gap is { } gap
            ? (Verdict.Inconclusive, new LevelOutsideCoverageReason(at, gap))
            : Judge(at, bias, beside, allowed, data);
        return new(level, coverage.Below, coverage.Above, allowed, bias, beside, verdict, reason);
    }

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
            : side.Furthest < 100 * allowed / (double)at.Level ? line
            : (Verdict.Inconclusive, new OneSideOfLevelReason(at, side));
    }
}
