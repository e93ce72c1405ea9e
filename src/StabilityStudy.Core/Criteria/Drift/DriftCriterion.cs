using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>The mean change that the drift over all time points predicts at the planned delay stays within the limit, for every declared shape.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Shapes">The declared shapes; at least one.</param>
public sealed record DriftCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ImmutableArray<Statistics.Drift.DriftShape> Shapes
) : Criterion(Id, Limits, Groups, ConfidenceLevel);
