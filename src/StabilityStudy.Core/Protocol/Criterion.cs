using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace StabilityStudy.Core.Protocol;

/// <summary>A prespecified test on the data of a cell.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Limits">Which limit each analyte is held to; an analyte that is not listed is not tested by this criterion.</param>
/// <param name="Groups">Patient groups it applies to; empty means all.</param>
/// <param name="ConfidenceLevel">0.90 means a 90 % interval for bias, a one-sided bound of that level for individual agreement.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BiasCriterion), "bias")]
[JsonDerivedType(typeof(IndividualCriterion), "individual")]
public abstract record Criterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel
);

/// <summary>The mean change stays within the allowable bias.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Scale">Scale on which the mean is taken.</param>
public sealed record BiasCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ChangeScale Scale
) : Criterion(Id, Limits, Groups, ConfidenceLevel);

/// <summary>Enough single specimens stay within the allowable difference.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMinimum">Least share of patients' specimens within the limit, percent.</param>
public sealed record IndividualCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMinimum
) : Criterion(Id, Limits, Groups, ConfidenceLevel);

/// <summary>The limit that one analyte is held to.</summary>
public sealed record LimitChoice(string Analyte, string Limit);

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
