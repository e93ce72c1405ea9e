using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Core.Doubts;

/// <summary>What keeps a time point from a conclusion although its criteria give one.</summary>
/// <param name="Controls">Runs left out for their controls, so that too few remain: nothing is concluded.</param>
/// <param name="LeftOut">Too many specimens left out: not supported.</param>
internal sealed record Doubt(
    ImmutableArray<VerdictReason> Controls,
    ImmutableArray<VerdictReason> LeftOut
)
{
    /// <summary>What the plan, or the way the study kept to it, does not allow to conclude: not supported.</summary>
    public ImmutableArray<VerdictReason> Plan { get; init; } = [];

    /// <summary>Every doubt.</summary>
    public ImmutableArray<VerdictReason> All => [.. Controls, .. Plan, .. LeftOut];

    /// <summary>The doubts about a time point, from its pairs and controls.</summary>
    public static Doubt Of(CellEvidence cell, ControlEvidence? controls)
    {
        var protocol = cell.Context.Protocol;
        return new(
            cell.Pairs.Any(pair => pair.Status == PairStatus.RunNotInControl)
            && cell.FewClustersOfShare is { } few
                ? [.. ControlDoubts.Of(cell.Pairs, controls), few]
                : [],
            LeftOutShare.Of(cell.Pairs, protocol.LeftOutPercentMaximum) is { } leftOut
                ? [leftOut]
                : []
        );
    }

    /// <summary>What the criteria conclude, as far as the doubts let it stand.</summary>
    public Conclusion Conclude(Conclusion byCriteria) =>
        !Controls.IsEmpty ? Conclusion.NotAssessed
        : byCriteria == Conclusion.Supported && !(LeftOut.IsEmpty && Plan.IsEmpty)
            ? Conclusion.Inconclusive
        : byCriteria;
}
