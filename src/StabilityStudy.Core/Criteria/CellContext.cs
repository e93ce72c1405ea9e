using StabilityStudy.Core.Controls;

namespace StabilityStudy.Core.Criteria;

/// <summary>What the criteria of a cell are read against.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Analyte">The analyte.</param>
/// <param name="Group">The patient group.</param>
/// <param name="Storage">The storage.</param>
/// <param name="TimePoint">The time point.</param>
/// <param name="Earlier">The pairs of the earlier time points, ascending: a drift criterion needs them.</param>
internal sealed record CellContext(
    StudyProtocol Protocol,
    Analyte Analyte,
    PatientGroup Group,
    Storage Storage,
    TimePoint TimePoint,
    ImmutableArray<ImmutableArray<PairRecord>> Earlier
)
{
    /// <summary>What bridging plasmas say about the runs; null without such plasmas.</summary>
    public RunBridging? Bridging { get; init; }

    /// <summary>
    /// Whether the change is counted from collection. Where the protocol counts from the baseline it is not; nor where storage begins later, frozen or in portions, because the time
    /// before it was spent in another state.
    /// </summary>
    public bool IsSinceCollection => Protocol.IsSinceCollection(Storage);

    /// <summary>The measured pairs of a cell as numbers.</summary>
    public CellData DataOf(ImmutableArray<PairRecord> pairs) =>
        CellData.Of(pairs, Analyte.Decimals, Protocol.OneRunWithin);

    /// <summary>The criteria that apply to analyte and group, in the order of the protocol, with their limits; a criterion that counts changes has none.</summary>
    public ImmutableArray<(Criterion Criterion, Limit? Limit)> Applying =>
        Protocol.Applying(Analyte.Id, Group.Id);

    /// <summary>Those of one kind by their keys.</summary>
    public IReadOnlyDictionary<string, T> Rules<T>()
        where T : Criterion =>
        Applying.Select(item => item.Criterion).OfType<T>().ToDictionary(rule => rule.Id);
}
