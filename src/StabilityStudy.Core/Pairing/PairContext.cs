using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>What the pairs of one analyte, group and storage are judged by.</summary>
internal sealed record PairContext(
    StudyProtocol Protocol,
    StudyFacts Facts,
    Analyte Analyte,
    PatientGroup Group,
    Storage Storage
)
{
    /// <summary>How many specimens and looks were planned, and when.</summary>
    public PlannedNumbers Numbers { get; init; } = new(Protocol, []);

    /// <summary>Looks at other data of this study.</summary>
    public ImmutableArray<EarlierLook> Looks { get; init; } = [];

    /// <summary>Whether the end of the collection is stated.</summary>
    public bool HasEnded { get; init; }

    /// <summary>The key of one of its time points.</summary>
    public CellKey KeyAt(TimePoint timePoint) => new(Analyte.Id, Group.Id, Storage.Id, timePoint);

    /// <summary>The specimens of a time point with those marked that are shown and not counted.</summary>
    public ImmutableArray<PairRecord> Marked(TimePoint timePoint, ImmutableArray<PairRecord> pairs)
    {
        var key = KeyAt(timePoint);
        var instruments = Numbers.Instruments;
        return PlannedPlaces.Mark(
            AddedAfterLook.Mark(
                pairs,
                key,
                Looks,
                Looks.FirstOrDefault(look => look.Of(key) is not null) is { } first
                    ? Numbers.LooksAt(first.At)
                    : Protocol.PlannedLooks
            ),
            pair => instruments.IsEmpty ? "" : pair.Instrument,
            pair =>
                instruments.IsEmpty || instruments.Contains(pair.Instrument)
                    ? Numbers.SpecimensAt(Group, pair.CollectedAt)
                    : 0
        );
    }

    /// <summary>The time points at which the analyte is tested in the group, ascending.</summary>
    public ImmutableArray<TimePoint> TimePoints => Protocol.TimePointsOf(Analyte, Group.Id);

    /// <summary>Every combination of analyte, group and storage that is studied, in the order of the protocol.</summary>
    public static IEnumerable<PairContext> All(StudyInputs inputs) =>
        from analyte in inputs.Protocol.Analytes
        from patientGroup in inputs.Protocol.Groups
        from storage in inputs.Protocol.Storages
        where
            (analyte.Groups.IsEmpty || analyte.Groups.Contains(patientGroup.Id))
            && (analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id))
        select new PairContext(inputs.Protocol, inputs.Facts, analyte, patientGroup, storage)
        {
            Numbers = new(inputs.Protocol, inputs.Locks),
            Looks = inputs.Looks,
            HasEnded = CollectionStanding.HasEnded(inputs),
        };
}
