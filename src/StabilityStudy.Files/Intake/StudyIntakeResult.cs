using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Intake;

/// <summary>A study as it is analyzed.</summary>
/// <param name="Inputs">Protocol, facts and rows; the rows were read from the canonical files.</param>
/// <param name="Canonical">The canonical files.</param>
/// <param name="Identity">Hashes and digest of everything that was read.</param>
/// <param name="LastingQueries">The queries that anybody gets again who reads protocol, study facts and canonical files; the others belong to the facility's files alone.</param>
public sealed record StudyIntakeResult(
    StudyInputs Inputs,
    CanonicalFiles Canonical,
    StudyIdentity Identity,
    ImmutableArray<DataQuery> LastingQueries
);
