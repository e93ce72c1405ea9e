namespace StabilityStudy.Core.Doubts;

/// <summary>
/// Whether so many specimens were left out of a time point that what remains no longer stands for what was received.
/// </summary>
internal static class LeftOutShare
{
    /// <summary>The doubt; null when at most the allowed share was left out.</summary>
    /// <param name="pairs">Every specimen of the time point.</param>
    /// <param name="percentMaximum">Largest share that may be left out, percent of the specimens meant to be tested there.</param>
    public static VerdictReason? Of(ImmutableArray<PairRecord> pairs, decimal percentMaximum)
    {
        var received = pairs.Count(pair => pair.IsDue);
        // A run left out for its control took its specimens along, whatever they were.
        var leftOut = pairs.Count(pair =>
            pair.IsLeftOut && pair.Status != PairStatus.RunNotInControl
        );
        return 100m * leftOut <= percentMaximum * received
            ? null
            : new TooManyLeftOutReason(leftOut, received, percentMaximum);
    }
}
