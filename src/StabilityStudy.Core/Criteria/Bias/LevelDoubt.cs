using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>
/// Whether a mean change inside its limit hides a change that depends on the level and reaches the limit at the ends of the range. It does not replace a decision-level criterion: a change above a threshold alone mostly escapes it.
/// </summary>
internal static class LevelDoubt
{
    /// <summary>Narrower groups have too little range for it; what the claim covers is then said by the range of the baselines.</summary>
    private const double LeastSpreadOfLogBaselines = 0.20;

    private const double Significance = 0.05;

    /// <summary>Nine in ten specimens of a normal distribution lie within so many SDs.</summary>
    private const double Ends = 1.645;

    /// <summary>The doubt of a mean that is otherwise met; null when there is none, or when another criterion judges levels.</summary>
    public static LevelDependentReason? Of(BiasCriterion criterion, Limit limit, CellEvidence cell)
    {
        if (
            cell.Context.Applying.Any(item => item.Criterion.JudgedLevels is not null)
            // The computed value at collection stands in both members of a pair, so only measured pairs show whether the slopes agree.
            || cell.Data.LevelSlopes
                is not { BaselineStandardDeviation: >= LeastSpreadOfLogBaselines } measured
            || !measured.Agree(Significance)
        )
        {
            return null;
        }

        return cell
            .Readings.SelectMany(reading => AtEnds(criterion, limit, reading.Data, cell.Context))
            .Where(item => item.Room <= 0)
            .OrderBy(item => item.Room)
            .Select(item => item.Reason)
            .FirstOrDefault();
    }

    private static IEnumerable<(LevelDependentReason Reason, double Room)> AtEnds(
        BiasCriterion criterion,
        Limit limit,
        CellData data,
        CellContext context
    )
    {
        if (
            data.LevelSlopes is not { } slopes
            || !RelativeChange.LogRatio(data.Pairs).TryGet(out var changes)
            || !ClusteredMean
                .WithInterval(
                    changes.Values.AsSpan(),
                    data.Errors.Clusterings,
                    criterion.ConfidenceLevel
                )
                .TryGet(out var mean)
        )
        {
            yield break;
        }

        var quantile = StudentT.Quantile(
            (1 + criterion.ConfidenceLevel) / 2,
            slopes.DegreesOfFreedom
        );
        foreach (var distance in new[] { -Ends, Ends })
        {
            var away = distance * slopes.LevelStandardDeviation;
            var (predicted, lower, upper) = LogRatio.BesideMean(
                mean,
                slopes.OnLevel * away,
                quantile * slopes.OnLevelStandardError * away
            );
            var level = Math.Exp((slopes.MeanLevel + away) / 100);
            var allowed = 100 * ChangeOnScale.AllowanceOf(limit).At(level) / level;
            yield return (
                new LevelDependentReason(level, context.Analyte.ShownUnit, predicted, lower, upper),
                Math.Min(allowed - upper, lower + allowed)
            );
        }
    }
}
