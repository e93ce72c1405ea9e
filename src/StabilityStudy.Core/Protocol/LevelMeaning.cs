namespace StabilityStudy.Core.Protocol;

/// <summary>What a result on the wrong side of a decision level means for a patient, in the words of the laboratory.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Group">Code of the patient group for which it holds; null for every group that has none of its own.</param>
/// <param name="Below">What follows where a result that belongs above the level falls below it; null where the protocol does not state it.</param>
/// <param name="Above">What follows where a result that belongs below the level rises to it or above; null where the protocol does not state it.</param>
public sealed record LevelMeaning(decimal Level, string? Group, string? Below, string? Above);
