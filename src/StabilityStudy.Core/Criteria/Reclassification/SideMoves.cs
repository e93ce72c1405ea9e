namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>What became of a specimen at a decision level, what weighs most first.</summary>
internal enum SideMove
{
    Up,
    Down,
    Failed,
    Undecidable,

    /// <summary>Clearly to the side that the criterion does not count.</summary>
    OtherWay,
    Stayed,
}

/// <summary>Which specimens clearly change side of a level.</summary>
internal static class SideMoves
{
    /// <summary>A clear change to the side that the criterion does not count is none of those that it counts.</summary>
    public static SideMove Counted(SideMove move, SideDirection direction) =>
        (move, direction) is (SideMove.Up, SideDirection.Down) or (SideMove.Down, SideDirection.Up)
            ? SideMove.OtherWay
            : move;

    /// <summary>Whether the baseline lies where a change that counts can begin.</summary>
    public static bool CanCount(PairRecord pair, decimal level, SideDirection direction) =>
        direction == SideDirection.Both
        || ResultRange.Of(pair.Baseline?.Result)?.Reaches(level)
            == (direction == SideDirection.Down);

    /// <summary>A change of side is clear when one of the results lies further from the level than the zone; of a result beyond what the method reports it is not known how far it lies, and it counts as clear.</summary>
    public static SideMove Of(PairRecord pair, decimal level, decimal zone)
    {
        if (pair.Status == PairStatus.Failed || pair.IsLost)
        {
            return pair.IsLost ? SideMove.Undecidable : SideMove.Failed;
        }

        var (x, y) = (ResultRange.Of(pair.Baseline?.Result), ResultRange.Of(pair.Delayed?.Result));
        return (x?.Reaches(level), y?.Reaches(level)) switch
        {
            ({ } before, { } after) => before == after
            || (
                pair.IsOfNumbers
                && Math.Abs(pair.Values().Baseline - level) <= zone
                && Math.Abs(pair.Values().Delayed - level) <= zone
                && zone > 0
            )
                ? SideMove.Stayed
            : after ? SideMove.Up
            : SideMove.Down,
            _ => pair.Delayed?.Result is MissingResult ? SideMove.Failed : SideMove.Undecidable,
        };
    }
}
