namespace StabilityStudy.Core.Pairing;

/// <summary>How long a portion was not frozen: clotting factors change in that time as in any plasma.</summary>
/// <param name="BeforeFreezing">From collection to freezing.</param>
/// <param name="AfterThawing">From thawing to the test.</param>
public sealed record FrozenTimes(TimeSpan BeforeFreezing, TimeSpan AfterThawing)
{
    /// <summary>The times of a tube; null when it was not frozen and thawed, or not tested.</summary>
    internal static FrozenTimes? Of(TubeRow? tube, DateTimeOffset? testedAt) =>
        tube is { FrozenAt: { } frozenAt, ThawedAt: { } thawedAt } && testedAt is { } tested
            ? new FrozenTimes(frozenAt - tube.CollectedAt, tested - thawedAt)
            : null;
}
