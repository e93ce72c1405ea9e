using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>What the pairs of one analyte, group and storage are judged by.</summary>
internal sealed record PairContext(
    StudyProtocol Protocol,
    StudyFacts Facts,
    Analyte Analyte,
    PatientGroup Group,
    Storage Storage
);
