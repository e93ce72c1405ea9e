namespace StabilityStudy.Core.Criteria;

/// <summary>Why a verdict is what it is.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">The reason in words.</param>
public sealed record VerdictReason(string Code, string Text);
