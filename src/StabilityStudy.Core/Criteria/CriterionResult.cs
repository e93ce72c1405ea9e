using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Core.Criteria;

/// <summary>What one criterion says about one cell, with the figures that decided.</summary>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Verdict">What it says.</param>
/// <param name="Reasons">Why, most important first; never empty.</param>
public abstract record CriterionResult(
    string Criterion,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons
)
{
    /// <summary>Of which kind of criterion it is.</summary>
    public abstract CriterionKind Kind { get; }

    /// <summary>The limit whose width tells how much the criterion asks, and for what it serves; null where a share alone does.</summary>
    internal abstract LimitUse? LimitUse { get; }

    /// <summary>The figures on which the number of specimens bears; empty where none could be computed.</summary>
    /// <param name="compared">Number of compared pairs.</param>
    /// <param name="days">Number of collection days among them.</param>
    internal abstract ImmutableArray<SizedFigure> Sized(int compared, int days);
}

/// <summary>A limit in use.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="OfMean">Whether a mean, or a line through the means, is held to it; otherwise each specimen is.</param>
internal sealed record LimitUse(Limit Limit, bool OfMean);
