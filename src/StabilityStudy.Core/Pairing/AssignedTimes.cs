namespace StabilityStudy.Core.Pairing;

/// <summary>
/// At which time points a specimen is meant to be tested when the protocol tests each at some of them only. Once a
/// specimen has rows, or tubes stated not to have been drawn, at as many as planned the others are not assigned; before that each missing one is a missing result.
/// </summary>
internal static class AssignedTimes
{
    /// <summary>The time points of a draw.</summary>
    /// <param name="draw">The draw.</param>
    /// <param name="timePoints">Those of its analyte.</param>
    /// <param name="perSpecimen">How many of them each specimen is tested at; null means all.</param>
    public static ImmutableArray<TimePoint> Of(
        Draw draw,
        ImmutableArray<TimePoint> timePoints,
        int? perSpecimen
    )
    {
        return perSpecimen is { } planned ? OfTested(draw, timePoints, planned) : timePoints;
    }

    private static ImmutableArray<TimePoint> OfTested(
        Draw draw,
        ImmutableArray<TimePoint> timePoints,
        int planned
    )
    {
        var tested = timePoints
            .Where(timePoint =>
                !draw.ResultsAt(new TestOccasion(timePoint)).IsEmpty
                || draw.NotDrawnAt(timePoint) is not null
            )
            .ToImmutableArray();
        return tested.Length >= planned ? tested : timePoints;
    }

    /// <summary>The record of a specimen at a time point that is not its own.</summary>
    public static PairRecord NotAssigned(Draw draw, BaselineFinding baseline) =>
        new(
            draw.Drawn.Collected,
            PairStatus.NotAssigned,
            "tested at other time points, as planned",
            baseline.Measurement,
            null,
            IsOutlier: false
        )
        {
            HasValidBaseline = baseline.Status == PairStatus.Compared,
        };
}
