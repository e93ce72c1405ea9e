namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The pairs lie on one line.</summary>
public sealed record PairsOnOneLineReason() : VerdictReason(StaysWithMore: true);

/// <summary>The line puts the change at a decision level inside the limit, and the specimens on one side of the level do not show it.</summary>
/// <param name="Level">The level.</param>
/// <param name="Beside">The change there as that side has it.</param>
public sealed record OneSideOfLevelReason(LevelInUnit Level, ChangeBesideLevel Beside)
    : VerdictReason;
