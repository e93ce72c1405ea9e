namespace StabilityStudy.Core.Protocol;

/// <summary>How far a result may change: percent of the baseline, an absolute amount, or the greater of both.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Percent">Percent of the baseline; null when only absolute.</param>
/// <param name="AbsoluteInUnit">Amount in the analyte's unit; null when only percent.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record Limit(string Id, decimal? Percent, decimal? AbsoluteInUnit, string Source);
