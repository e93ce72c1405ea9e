using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The mean change stays within the allowable bias.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Scale">Scale on which the mean is taken.</param>
public sealed record BiasCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ChangeScale Scale
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <summary>Whether the interval or the mean alone is held to the limit.</summary>
    public DecisionRule Rule { get; init; } = DecisionRule.Confidence;
}
