using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Files.Protocols;

/// <summary>A protocol as far as it could be read, with the places for the checks.</summary>
internal sealed record ProtocolDraft(
    TomlTable Root,
    string Code,
    string Version,
    ImmutableArray<TimePoint> TimePoints,
    Tolerance Tolerance,
    TimeSpan BaselineWithin,
    TubePlan TubePlan,
    int Replicates,
    int MinimumDays,
    TimeSpan WindowStep,
    ConductRules Conduct,
    Parts<Signatory> Signatories,
    Parts<Storage> Storages,
    Parts<PatientGroup> Groups,
    Eligibility Eligibility,
    Parts<Analyte> Analytes,
    Parts<Limit> Limits,
    Parts<Criterion?> Criteria
)
{
    /// <summary>The protocol; sound only when no query stops.</summary>
    public StudyProtocol ToProtocol() =>
        new(
            Code,
            Version,
            TimePoints,
            Tolerance,
            BaselineWithin,
            TubePlan,
            Replicates,
            MinimumDays,
            WindowStep,
            Signatories.Values,
            Storages.Values,
            Groups.Values,
            Eligibility,
            Analytes.Values,
            Limits.Values,
            [.. Criteria.Values.OfType<Criterion>()]
        )
        {
            LeftOutPercentMaximum = Conduct.LeftOutPercentMaximum,
            OneRunWithin = Conduct.OneRunWithin,
            RerunReasons = Conduct.RerunReasons,
            Controls = Conduct.Controls,
            RepeatDraws = Conduct.RepeatDraws,
            DelaysPerSpecimen = Conduct.DelaysPerSpecimen,
            Instruments = Conduct.Instruments,
            PlannedLooks = Conduct.PlannedLooks,
            ChangeSince = Conduct.ChangeSince,
            TimeOrigin = Conduct.TimeOrigin,
            PlannedDays = Conduct.PlannedDays,
            ReviewAfter = Conduct.ReviewAfter,
            Draw = Conduct.Draw?.Value,
            Spin = Conduct.Spin?.Value,
            Freezing = Conduct.Freezing?.Value,
            Repeat = Conduct.Repeat,
        };
}
