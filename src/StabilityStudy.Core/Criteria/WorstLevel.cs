namespace StabilityStudy.Core.Criteria;

/// <summary>The level that decides a criterion of which every level must pass: one that is not met, else one that is open, else the first.</summary>
internal static class WorstLevel
{
    /// <summary>What is said where the protocol states no level.</summary>
    public static readonly VerdictReason None = new NoLevelReason();

    /// <summary>The level; null without any.</summary>
    public static T? Of<T>(ImmutableArray<T> levels, Func<T, Verdict> verdictOf)
        where T : class =>
        levels.FirstOrDefault(level => verdictOf(level) == Verdict.NotMet)
        ?? levels.FirstOrDefault(level => verdictOf(level) == Verdict.Inconclusive)
        ?? levels.FirstOrDefault();
}
