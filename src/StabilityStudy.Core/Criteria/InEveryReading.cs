namespace StabilityStudy.Core.Criteria;

/// <summary>What several readings of the same pairs say together: met only if every one is, not met only if every one is not.</summary>
internal static class InEveryReading
{
    /// <param name="verdicts">One a reading, at least one.</param>
    public static Verdict Of(IEnumerable<Verdict> verdicts)
    {
        var all = verdicts.Distinct().ToImmutableArray();
        return all is [var one] ? one : Verdict.Inconclusive;
    }

    /// <summary>
    /// The reading that stands for the others: of those that keep it from being met, or else of all, the one with the least room. Where one reading is open and another not met the open one stands for both, since what they say together is open.
    /// </summary>
    /// <param name="readings">The readings, at least one.</param>
    /// <param name="verdictOf">What a reading says.</param>
    /// <param name="roomOf">How far it is from being not met; the larger the better.</param>
    public static T Deciding<T>(
        ImmutableArray<T> readings,
        Func<T, Verdict> verdictOf,
        Func<T, double> roomOf
    )
    {
        if (Of(readings.Select(verdictOf)) == Verdict.NotMet)
        {
            return readings.MaxBy(roomOf)!;
        }

        return readings
            .OrderBy(item =>
                verdictOf(item) switch
                {
                    Verdict.Inconclusive => 0,
                    Verdict.NotMet => 1,
                    Verdict.Met => 2,
                }
            )
            .ThenBy(roomOf)
            .First();
    }
}
