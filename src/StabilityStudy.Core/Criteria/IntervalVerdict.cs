namespace StabilityStudy.Core.Criteria;

/// <summary>What an interval says against a lower and an upper limit; an end on a limit is not inside.</summary>
internal static class IntervalVerdict
{
    /// <summary>Inside, wholly beyond, or reaching the limit, with the reason in words.</summary>
    /// <param name="lower">Lower end.</param>
    /// <param name="upper">Upper end.</param>
    /// <param name="lowerLimit">Allowable change downward.</param>
    /// <param name="upperLimit">Allowable change upward.</param>
    /// <param name="of">What the interval is of: "the mean change".</param>
    public static (Verdict Verdict, VerdictReason Reason) Of(
        double lower,
        double upper,
        double lowerLimit,
        double upperLimit,
        string of
    ) =>
        lower > lowerLimit && upper < upperLimit
            ? (
                Verdict.Met,
                new("interval-inside", $"the interval of {of} lies inside the allowable bias")
            )
        : lower >= upperLimit || upper <= lowerLimit
            ? (
                Verdict.NotMet,
                new(
                    "interval-outside",
                    $"the interval of {of} lies wholly beyond the allowable bias"
                )
            )
        : (
            Verdict.Inconclusive,
            new("interval-reaches-limit", $"the interval of {of} reaches beyond the allowable bias")
        );
}
