using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Specimens;

/// <summary>Everything that an analysis starts from: what was planned, what happened, and the rows.</summary>
public sealed record StudyInputs(
    StudyProtocol Protocol,
    StudyFacts Facts,
    ImmutableArray<TubeRow> Tubes,
    ImmutableArray<ResultRow> Results
)
{
    /// <summary>Control results; empty when the study has no controls.csv.</summary>
    public ImmutableArray<ControlRow> Controls { get; init; } = [];

    /// <summary>Looks at other data of this study, before anybody looked at these.</summary>
    public ImmutableArray<EarlierLook> Looks { get; init; } = [];

    /// <summary>The locks of the protocol, the first one first; empty when it was never locked.</summary>
    public ImmutableArray<ProtocolLock> Locks { get; init; } = [];
}
