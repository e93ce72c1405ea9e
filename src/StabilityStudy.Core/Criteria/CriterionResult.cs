using System.Collections.Immutable;
using System.Text.Json.Serialization;
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
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BiasResult), "bias")]
[JsonDerivedType(typeof(IndividualResult), "individual")]
[JsonDerivedType(typeof(DecisionLevelResult), "decision-level")]
[JsonDerivedType(typeof(ReclassificationResult), "reclassification")]
[JsonDerivedType(typeof(ClassificationResult), "classification")]
[JsonDerivedType(typeof(DriftCriterionResult), "drift")]
public abstract record CriterionResult(
    string Criterion,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons
);
