using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Intake;

/// <summary>A study as it is analyzed.</summary>
/// <param name="Inputs">Protocol, facts and rows; the rows were read from the canonical files.</param>
/// <param name="Canonical">The canonical files.</param>
/// <param name="RawFiles">The facility's files from which they were made.</param>
/// <param name="Digest">Fingerprint of protocol, study facts and canonical files.</param>
/// <param name="LastingQueries">The queries that anybody gets again who reads protocol, study facts and canonical files; the others belong to the facility's files alone.</param>
public sealed record StudyIntakeResult(
    StudyInputs Inputs,
    CanonicalFiles Canonical,
    ImmutableArray<FileHash> RawFiles,
    string Digest,
    ImmutableArray<DataQuery> LastingQueries
);

/// <summary>The hash of a file.</summary>
/// <param name="Name">Name in the study folder.</param>
/// <param name="Sha256">SHA-256 of the content, lower-case hexadecimal.</param>
public sealed record FileHash(string Name, string Sha256);
