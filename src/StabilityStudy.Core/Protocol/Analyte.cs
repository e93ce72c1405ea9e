using System.Collections.Immutable;

namespace StabilityStudy.Core.Protocol;

/// <summary>A measured quantity.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Name">Name in the report.</param>
/// <param name="Method">Method principle in words (optical one-stage, chromogenic …); null when not stated.</param>
/// <param name="Loinc">LOINC code; null when not stated.</param>
/// <param name="Unit">UCUM unit.</param>
/// <param name="Decimals">Decimals of a reported result.</param>
/// <param name="StandardWindow">What today's rule allows.</param>
/// <param name="ManufacturerLimit">What the manufacturer's instructions allow; null when they are silent.</param>
/// <param name="BetweenRunCvPercent">Between-run coefficient of variation, percent; null when not stated.</param>
/// <param name="MeasuringInterval">Lowest and highest reportable result; null when not stated.</param>
/// <param name="DecisionLevels">Values at which care changes, in the unit, ascending.</param>
/// <param name="ErrorVarianceRatio">λ = variance of the baseline's error ÷ variance of the delayed result's error, for Deming regression.</param>
/// <param name="DriftShape">Shape of change with time, declared before data.</param>
public sealed record Analyte(
    string Id,
    string Name,
    string? Method,
    string? Loinc,
    string Unit,
    int Decimals,
    WindowRule StandardWindow,
    WindowRule? ManufacturerLimit,
    decimal? BetweenRunCvPercent,
    MeasuringInterval? MeasuringInterval,
    ImmutableArray<decimal> DecisionLevels,
    decimal ErrorVarianceRatio,
    Statistics.Drift.DriftShape DriftShape
);

/// <summary>A window that some rule allows.</summary>
/// <param name="Time">Longest time from collection to test.</param>
/// <param name="Source">The rule: a document, or "common practice".</param>
public sealed record WindowRule(TimeSpan Time, string Source);

/// <summary>Lowest and highest result that the method reports as a number, in the analyte's unit.</summary>
public sealed record MeasuringInterval(decimal Lowest, decimal Highest);
