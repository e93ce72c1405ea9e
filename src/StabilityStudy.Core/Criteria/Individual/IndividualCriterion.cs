using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>Enough single specimens stay within the allowable difference.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMinimum">Least share of patients' specimens within the limit, percent.</param>
public sealed record IndividualCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMinimum
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <summary>Whether the exact bound or the observed share alone is held to the required share.</summary>
    public DecisionRule Rule { get; init; } = DecisionRule.Confidence;
}
