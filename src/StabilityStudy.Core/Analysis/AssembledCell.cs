using StabilityStudy.Core.Controls;

namespace StabilityStudy.Core.Analysis;

/// <summary>The specimens of a time point before anything is judged.</summary>
/// <param name="TimePoint">The planned delay.</param>
/// <param name="Pairs">Every specimen, those marked that do not count.</param>
/// <param name="Controls">What the control results say of their runs; null when the protocol keeps them elsewhere.</param>
internal sealed record AssembledCell(
    TimePoint TimePoint,
    ImmutableArray<PairRecord> Pairs,
    ControlEvidence? Controls
)
{
    /// <summary>What the way of collecting does not allow to conclude.</summary>
    public ImmutableArray<VerdictReason> Doubts { get; init; } = [];

    /// <summary>The specimens as they were put together, runs that no control vouches for among them.</summary>
    private ImmutableArray<PairRecord> Received { get; init; } = [];

    /// <summary>Marks what does not count.</summary>
    public static AssembledCell Of(
        TimePoint timePoint,
        ImmutableArray<PairRecord> received,
        PairContext context,
        ImmutableArray<ControlRow> controls
    )
    {
        var checksRuns = context.Protocol.Controls == ControlRule.EveryRun;
        return new(
            timePoint,
            OutlierFlags.Mark(
                context.Marked(
                    timePoint,
                    checksRuns ? RunControls.LeaveOut(received, controls) : received
                )
            ),
            checksRuns ? RunControls.Of(received, controls) : null
        )
        {
            Received = received,
        };
    }

    /// <summary>The same with further doubts.</summary>
    public AssembledCell Doubted(IEnumerable<VerdictReason> further) =>
        this with
        {
            Doubts = [.. Doubts, .. further],
        };

    /// <summary>Some of its specimens alone; marks and doubts stay as they are.</summary>
    public AssembledCell Only(Func<PairRecord, bool> some, ImmutableArray<ControlRow> controls)
    {
        ImmutableArray<PairRecord> received = [.. Received.Where(some)];
        return this with
        {
            Pairs = [.. Pairs.Where(some)],
            Controls = Controls is null ? null : RunControls.Of(received, controls),
            Received = received,
        };
    }
}
