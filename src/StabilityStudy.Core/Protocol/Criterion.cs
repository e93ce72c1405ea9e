using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace StabilityStudy.Core.Protocol;

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

/// <summary>Enough specimens keep their class. Its limits name the analytes, each without a limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMinimum">Least share of specimens that keep their class, percent.</param>
/// <param name="Cutoffs">For numeric results: ascending values that separate the classes, the upper class including its cutoff; empty for qualitative results.</param>
/// <param name="WeakPositivesMinimum">Fewest specimens whose baseline is in the class just above the lowest; below it the criterion is inconclusive.</param>
public sealed record ClassificationCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMinimum,
    ImmutableArray<decimal> Cutoffs,
    int WeakPositivesMinimum
) : Criterion(Id, Limits, Groups, ConfidenceLevel);

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

/// <summary>What is held to a limit. The zero member is the safe one.</summary>
public enum DecisionRule
{
    /// <summary>A confidence interval or bound: the chance of a false claim is controlled.</summary>
    Confidence,

    /// <summary>The estimate alone: no error control, and the report says so.</summary>
    PointOnly,
}

/// <summary>The limit that one analyte is held to.</summary>
public sealed record LimitChoice(string Analyte, string? Limit);

/// <summary>How the change from baseline x to delayed y is expressed.</summary>
public enum ChangeScale
{
    /// <summary>100·(y − x)/x.</summary>
    Percent,

    /// <summary>y − x in the analyte's unit.</summary>
    Absolute,

    /// <summary>(y − x)/A(x), the share of the allowance used.</summary>
    Share,

    /// <summary>100·ln(y/x).</summary>
    LogRatio,
}
