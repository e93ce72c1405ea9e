using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>
/// Decides a decision-level criterion: at every required level the interval of the change that weighted Deming
/// regression predicts, the wider of specimens and collection days, lies strictly inside the allowance there. A level
/// that the baselines do not cover is left open, and one near which skewed changes make the interval too short.
/// </summary>
internal static class DecisionLevelEvaluation
{
    /// <summary>The change that a line predicts at a level: pairs, ratio of error variances, level, confidence, collection days.</summary>
    public delegate Estimate<BiasAtLevel> Prediction(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double level,
        double confidenceLevel,
        ReadOnlySpan<int> cluster
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
        var (data, _, context) = cell;
        var required = criterion.Levels.IsEmpty ? context.Analyte.DecisionLevels : criterion.Levels;
        ImmutableArray<LevelResult> levels =
        [
            .. required
                .Distinct()
                .Order()
                .Select(level =>
                    Judge(level, criterion.ConfidenceLevel, limit, data, context, predict)
                ),
        ];
        ImmutableArray<VerdictReason> doubts =
        [
            .. new VerdictReason?[]
            {
                cell.FewDaysOfMean,
                BiasDoubts.OfUncounted(cell.Uncounted),
                RepeatDrawsDoubt.Of(data.Compared),
            }.OfType<VerdictReason>(),
        ];
        var worst = WorstLevel.Of(levels, level => level.Verdict);
        return new DecisionLevelResult(
            criterion.Id,
            limit,
            doubts.IsEmpty && worst is not null ? worst.Verdict : Verdict.Inconclusive,
            doubts.Add(worst?.Reason ?? WorstLevel.None),
            criterion.ConfidenceLevel,
            levels
        );
    }

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
        LevelResult With(Estimate<BiasAtLevel> change, Verdict verdict, VerdictReason reason) =>
            new(level, coverage.Below, coverage.Above, allowed, change, verdict, reason);
        if (coverage.Gap is { } gap)
        {
            return With(
                Estimate.Refused<BiasAtLevel>(Refusal.LevelOutsideCoverage),
                Verdict.Inconclusive,
                new LevelOutsideCoverageReason(at, gap)
            );
        }

        var change = predict(
            data.Pairs.X.AsSpan(),
            data.Pairs.Y.AsSpan(),
            (double)context.Analyte.ErrorVarianceRatio,
            (double)level,
            confidenceLevel,
            data.Day.AsSpan()
        );
        if (!change.TryGet(out var bias))
        {
            return With(
                change,
                Verdict.Inconclusive,
                new NotComputableReason(change.NotComputable!)
            );
        }

        if (data.Pairs.AreOnOneLine())
        {
            return With(change, Verdict.Inconclusive, new PairsOnOneLineReason());
        }

        var (verdict, reason) = IntervalVerdict.Of(
            bias.Lower,
            bias.Upper,
            -allowed,
            allowed,
            new ChangeAtLevelFigure(at)
        );
        return verdict == Verdict.Met && SkewedToward(bias.Bias, allowed, data, limit) is { } skewed
            ? With(change, Verdict.Inconclusive, skewed)
            : With(change, verdict, reason);
    }

    /// <summary>The skewness of the changes as shares of the allowance, toward the limit that is nearer to the predicted change; null when it is small.</summary>
    private static VerdictReason? SkewedToward(
        double change,
        double allowed,
        CellData data,
        Limit limit
    ) =>
        ChangeOnScale.Of(data, ChangeScale.Share, limit).TryGet(out var shares)
        && Spread.Summarize(shares.Values.AsSpan()).TryGet(out var spread)
            ? BiasDoubts.OfSkewness(spread.Skewness, change / allowed, shares)
            : null;
}
