using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Core.Planning;

/// <summary>What keeps a criterion from being met in a simulated study.</summary>
public enum ChanceCost
{
    /// <summary>The mean change itself, with the spread of single specimens.</summary>
    Change,

    /// <summary>What days and runs share, or that they are too few.</summary>
    Days,

    /// <summary>A skewed distribution of the changes.</summary>
    Skewness,

    /// <summary>More single specimens outside their limit than their number allows.</summary>
    Share,

    /// <summary>The change at a decision level.</summary>
    Level,

    /// <summary>Too few baselines beside a decision level.</summary>
    Range,

    /// <summary>Too many changes of side of a decision level.</summary>
    Sides,
}

/// <summary>How often something kept a criterion from being met.</summary>
/// <param name="Cost">What.</param>
/// <param name="Rate">In which share of the simulated studies.</param>
public sealed record CostRate(ChanceCost Cost, double Rate);

/// <summary>Finds in a result what kept the criterion from being met.</summary>
internal static class ChanceCosts
{
    /// <summary>What it was; null for a criterion that is met.</summary>
    public static ChanceCost? Of(CriterionResult result) =>
        result.Verdict == Verdict.Met ? null
        : result.Reasons.Any(IsOfDays) ? ChanceCost.Days
        : result switch
        {
            BiasResult bias => OfMean(bias),
            IndividualResult => ChanceCost.Share,
            DecisionLevelResult => result.Reasons.Any(IsOfRange)
                ? ChanceCost.Range
                : ChanceCost.Level,
            ReclassificationResult => result.Reasons.Any(IsOfRange)
                ? ChanceCost.Range
                : ChanceCost.Sides,
            DriftCriterionResult => ChanceCost.Change,
            _ => ChanceCost.Share,
        };

    /// <summary>Of the intervals that the deciding one spans, the first in this order that is not inside: over specimens, over clusters, lengthened.</summary>
    private static ChanceCost OfMean(BiasResult bias)
    {
        if (bias.Reasons.Any(reason => reason is LevelDependentReason))
        {
            return ChanceCost.Level;
        }

        if (!bias.Mean.TryGet(out var mean))
        {
            return ChanceCost.Change;
        }

        bool Inside(double lower, double upper) =>
            lower > bias.LowerLimit && upper < bias.UpperLimit;
        return !Inside(mean.BySpecimen.Lower, mean.BySpecimen.Upper) ? ChanceCost.Change
            : mean.ByCluster.Any(item => !Inside(item.Lower, item.Upper)) ? ChanceCost.Days
            : ChanceCost.Skewness;
    }

    private static bool IsOfDays(VerdictReason reason) =>
        reason is TooFewDaysReason or TooFewRunsReason or OpenIfRunsMovedReason;

    private static bool IsOfRange(VerdictReason reason) =>
        reason is LevelOutsideCoverageReason or TooFewNearReason or NoLevelReason;
}
