namespace StabilityStudy.Core.Criteria;

/// <summary>What an interval says against a lower and an upper limit; an end on a limit is not inside.</summary>
internal static class IntervalVerdict
{
    /// <summary>Inside, wholly beyond, or reaching the limit.</summary>
    /// <param name="lower">Lower end.</param>
    /// <param name="upper">Upper end.</param>
    /// <param name="lowerLimit">Allowable change downward.</param>
    /// <param name="upperLimit">Allowable change upward.</param>
    /// <param name="figure">What the interval is of.</param>
    public static (Verdict Verdict, VerdictReason Reason) Of(
        double lower,
        double upper,
        double lowerLimit,
        double upperLimit,
        IntervalFigure figure
    ) =>
        lower > lowerLimit && upper < upperLimit
            ? (Verdict.Met, new IntervalReason(IntervalPlace.Inside, figure))
        : lower >= upperLimit || upper <= lowerLimit
            ? (Verdict.NotMet, new IntervalReason(IntervalPlace.Outside, figure))
        : (Verdict.Inconclusive, new IntervalReason(IntervalPlace.ReachesLimit, figure));
}
