namespace StabilityStudy.Core.Estimates;

/// <summary>The pairs of a cell in one reading.</summary>
/// <param name="Kind">Which reading.</param>
/// <param name="Pairs">Every pair that it holds, the measured ones with the values of this reading.</param>
/// <param name="Data">The compared ones as numbers.</param>
internal sealed record PairReading(
    ChangeReading Kind,
    ImmutableArray<PairRecord> Pairs,
    CellData Data
)
{
    /// <summary>The same pairs before their values at collection were computed; null where none were.</summary>
    public PairReading? FromBaseline { get; init; }

    /// <summary>Specimens whose value at collection is not above zero: a percentage of it means nothing, and they count as outside.</summary>
    public ImmutableArray<string> WithoutValueAtCollection { get; init; } = [];

    /// <summary>Specimens that the reading leaves out because no bridging plasma was tested in both of their runs.</summary>
    public ImmutableArray<string> WithoutBridging { get; init; } = [];

    /// <summary>The readings that a cell calls for; as measured is the first.</summary>
    public static ImmutableArray<PairReading> All(
        ImmutableArray<PairRecord> pairs,
        CellContext context
    )
    {
        ImmutableArray<PairReading> fromBaseline =
        [
            new(ChangeReading.AsMeasured, pairs, context.DataOf(pairs)),
            .. context.Bridging?.Reading(pairs, context) is { } bridged
                ? [bridged]
                : (PairReading[])[],
        ];
        return context.IsSinceCollection
            ?
            [
                .. fromBaseline,
                .. fromBaseline.Select(reading => ValueAtCollection.Reading(reading, context)),
            ]
            : fromBaseline;
    }

    /// <summary>Without some compared pairs, by which means and lines go; counts keep them.</summary>
    public PairReading WithoutPairs(Func<PairRecord, bool> leaveOut) =>
        this with
        {
            Data = Data.WithoutPairs(leaveOut),
        };
}
