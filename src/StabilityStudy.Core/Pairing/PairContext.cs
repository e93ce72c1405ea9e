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
        select new PairContext(inputs.Protocol, inputs.Facts, analyte, patientGroup, storage);
}
