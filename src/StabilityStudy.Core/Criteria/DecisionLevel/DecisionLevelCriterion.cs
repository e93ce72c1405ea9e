using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The change predicted at decision levels stays within the limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Levels">Required levels in the unit of the analyte; empty means the analyte's decision levels.</param>
public sealed record DecisionLevelCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ImmutableArray<decimal> Levels
) : Criterion(Id, Limits, Groups, ConfidenceLevel);
