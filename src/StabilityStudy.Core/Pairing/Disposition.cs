namespace StabilityStudy.Core.Pairing;

/// <summary>What became of every specimen of a cell; the counts add up to <see cref="Received"/>.</summary>
/// <param name="Planned">Specimens the protocol plans for the group.</param>
/// <param name="Received">Specimens of the group in specimens.csv.</param>
/// <param name="Counts">Each status with its count, in the order of the steps, zeros included.</param>
public sealed record Disposition(int Planned, int Received, ImmutableArray<StatusCount> Counts)
{
    /// <summary>Counts the pairs of a cell.</summary>
    public static Disposition Of(int planned, ImmutableArray<PairRecord> pairs) =>
        new(
            planned,
            pairs.Length,
            [
                .. Enum.GetValues<PairStatus>()
                    .Select(status => new StatusCount(
                        status,
                        pairs.Count(pair => pair.Status == status)
                    )),
            ]
        );

    /// <summary>The count of one status.</summary>
    public int Count(PairStatus status) => Counts.Single(item => item.Status == status).Count;
}

/// <summary>How many specimens of a cell have a status.</summary>
/// <param name="Status">What became of the specimens.</param>
/// <param name="Count">Number of specimens.</param>
public sealed record StatusCount(PairStatus Status, int Count);
