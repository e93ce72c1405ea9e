using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>Few enough specimens change the side of a decision level. Its limits name the analytes, each without a limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMaximum">Largest share of patients' specimens that may change side, percent.</param>
/// <param name="Levels">Levels in the unit of the analyte, each judged; empty means the analyte's decision levels.</param>
public sealed record ReclassificationCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMaximum,
    ImmutableArray<decimal> Levels
) : Criterion(Id, Limits, Groups, ConfidenceLevel);
