using System.Collections.Immutable;
using System.Text.Json.Serialization;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Criteria;

/// <summary>A prespecified test on the data of a cell.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Limits">Which limit each analyte is held to; an analyte that is not listed is not tested by this criterion. Criteria that count changes of side or class need no limit: there it is null.</param>
/// <param name="Groups">Patient groups it applies to; empty means all.</param>
/// <param name="ConfidenceLevel">0.90 means a 90 % interval for bias, a one-sided bound of that level for individual agreement.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BiasCriterion), "bias")]
[JsonDerivedType(typeof(IndividualCriterion), "individual")]
[JsonDerivedType(typeof(DecisionLevelCriterion), "decision-level")]
[JsonDerivedType(typeof(ReclassificationCriterion), "reclassification")]
[JsonDerivedType(typeof(ClassificationCriterion), "classification")]
[JsonDerivedType(typeof(DriftCriterion), "drift")]
public abstract record Criterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel
)
{
    /// <summary>Whether it applies to a patient group.</summary>
    public bool AppliesTo(string group) => Groups.IsEmpty || Groups.Contains(group);
}

/// <summary>The limit that one analyte is held to.</summary>
public sealed record LimitChoice(string Analyte, string? Limit);
