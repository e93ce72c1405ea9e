using System.Collections.Immutable;
using System.Text.Json.Serialization;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Conclusions;

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

/// <summary>The mean change against the allowable bias.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="Scale">Scale of the figures: percent, the unit, share of the allowance, or 100·ln(y/x).</param>
/// <param name="ConfidenceLevel">Level of the two-sided interval.</param>
/// <param name="LowerLimit">Allowable mean change downward; null when the limit says nothing on this scale.</param>
/// <param name="UpperLimit">Allowable mean change upward; null likewise.</param>
/// <param name="Mean">Mean change and the interval that decided.</param>
/// <param name="Equivalence">Two one-sided tests, over specimens, collection days or persons with several specimens, whichever says least; shown, never decisive.</param>
/// <param name="Spread">Spread and skewness of the changes on this scale.</param>
public sealed record BiasResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    ChangeScale Scale,
    double ConfidenceLevel,
    double? LowerLimit,
    double? UpperLimit,
    Estimate<ClusteredMeanInterval> Mean,
    Estimate<EquivalenceTest> Equivalence,
    Estimate<SpreadSummary> Spread
) : CriterionResult(Criterion, Verdict, Reasons);

/// <summary>The share of single specimens within the allowable difference.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="ConfidenceLevel">Level of each one-sided bound.</param>
/// <param name="Agreement">The counts behind the share.</param>
/// <param name="RequiredShare">Required share, 0 to 1.</param>
/// <param name="Bounds">Share with exact bounds; refused when there is no pair to count.</param>
/// <param name="MostOutside">Most specimens outside with which this number of specimens can still meet the criterion; null when none can.</param>
public sealed record IndividualResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    AgreementCount Agreement,
    double RequiredShare,
    Estimate<ProportionBounds> Bounds,
    int? MostOutside
) : CriterionResult(Criterion, Verdict, Reasons);
