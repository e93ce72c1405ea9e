using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Everything that a study's data say: the single truth from which every output is made.
/// </summary>
/// <param name="ToolVersion">Version of the program that made it.</param>
/// <param name="Identity">Which study and which bytes.</param>
/// <param name="Lock">Whether the protocol came before the data, and how well that is shown.</param>
/// <param name="Protocol">What was planned.</param>
/// <param name="Facts">What happened.</param>
/// <param name="Queries">Every data query that did not stop.</param>
/// <param name="Sequences">The conclusions, one sequence of time points for each analyte, patient group and storage.</param>
public sealed record StudyAnalysis(
    string ToolVersion,
    StudyIdentity Identity,
    LockEvidence Lock,
    StudyProtocol Protocol,
    StudyFacts Facts,
    ImmutableArray<DataQuery> Queries,
    ImmutableArray<Sequence> Sequences
)
{
    /// <summary>Looks at other data of this study, before anybody looked at these.</summary>
    public ImmutableArray<EarlierLook> Looks { get; init; } = [];

    /// <summary>Whether specimens are still to come somewhere, so that a report is an interim one.</summary>
    public bool IsInterim =>
        Sequences.Any(sequence => sequence.Collection.State == CollectionState.Incomplete);

    /// <summary>What the control results were, one for each material and analyte; empty when the protocol keeps them elsewhere.</summary>
    public ImmutableArray<ControlSummary> Controls { get; init; } = [];

    /// <summary>How often studies like this one would support each time point; null unless asked for, and no part of a report.</summary>
    public StudyPower? Power { get; init; }
}

/// <summary>Which study, and which bytes it was computed from.</summary>
/// <param name="InputDigest">SHA-256 over the sorted names and hashes of <paramref name="Inputs"/>, lower-case hexadecimal.</param>
/// <param name="Inputs">Protocol, study and canonical data files.</param>
/// <param name="RawFiles">The facility's own files as they were read.</param>
public sealed record StudyIdentity(
    string InputDigest,
    ImmutableArray<FileHash> Inputs,
    ImmutableArray<FileHash> RawFiles
)
{
    /// <summary>Fingerprint of the data and of the decisions about them, which tells looks at other data from looks at these.</summary>
    public string DataSha256 { get; init; } = "";

    /// <summary>Hash of an input; null when there is no such file.</summary>
    public string? HashOf(string name) => Inputs.FirstOrDefault(file => file.Name == name)?.Sha256;
}

/// <summary>A file's name and SHA-256, lower-case hexadecimal.</summary>
/// <param name="Name">Name of the file.</param>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hexadecimal.</param>
public sealed record FileHash(string Name, string Sha256);
