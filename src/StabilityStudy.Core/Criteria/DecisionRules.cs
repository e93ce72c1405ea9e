namespace StabilityStudy.Core.Criteria;

/// <summary>The rules by which conclusions are drawn, as a whole.</summary>
public static class DecisionRules
{
    /// <summary>
    /// Rises only when a decision could come out differently for the same files; METHODS.md tells what changed. Reports
    /// state it, so that a later version knows whether its conclusions must be the same.
    /// </summary>
    public const int Number = 2;
}
