using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Doubts;

namespace StabilityStudy.Core.Analysis;

/// <summary>A time point judged on its own, before the sequence decides whether it is reached.</summary>
/// <param name="Evidence">What it was judged on.</param>
/// <param name="Criteria">What each criterion says.</param>
/// <param name="Controls">What the control results say; null when the protocol keeps them elsewhere.</param>
/// <param name="Doubt">What keeps it from a conclusion although its criteria give one.</param>
internal sealed record JudgedCell(
    CellEvidence Evidence,
    ImmutableArray<CriterionResult> Criteria,
    ControlEvidence? Controls,
    Doubt Doubt
)
{
    /// <summary>Judges the pairs of a time point.</summary>
    /// <param name="evidence">The pairs.</param>
    /// <param name="controls">What the control results say; null when the protocol keeps them elsewhere.</param>
    /// <param name="ofCollection">What the way of collecting does not allow to conclude.</param>
    public static JudgedCell Of(
        CellEvidence evidence,
        ControlEvidence? controls,
        ImmutableArray<VerdictReason> ofCollection
    ) =>
        new(
            evidence,
            CellEvaluation.Evaluate(evidence),
            controls,
            Doubt.Of(evidence, controls) with
            {
                Plan = [.. PlanDoubts.Of(evidence.Context), .. ofCollection],
            }
        );

    /// <summary>Judges the time points of one analyte, group and storage.</summary>
    /// <param name="cells">The time points, ascending.</param>
    /// <param name="context">What they are judged by.</param>
    /// <param name="controls">The control results of the analyte.</param>
    public static ImmutableArray<JudgedCell> All(
        ImmutableArray<AssembledCell> cells,
        PairContext context,
        ImmutableArray<ControlRow> controls
    )
    {
        var bridging = RunBridging.Of(controls);
        return
        [
            .. cells.Select(
                (cell, i) =>
                    Of(
                        CellEvidence.From(
                            cell.Pairs,
                            new CellContext(
                                context.Protocol,
                                context.Analyte,
                                context.Group,
                                context.Storage,
                                cell.TimePoint,
                                [.. cells.Take(i).Select(earlier => earlier.Pairs)]
                            )
                            {
                                Bridging = bridging,
                            }
                        ),
                        cell.Controls,
                        cell.Doubts
                    )
            ),
        ];
    }

    /// <summary>What its data alone conclude.</summary>
    public Conclusion Own { get; } = Doubt.Conclude(CellEvaluation.Conclude(Criteria));

    /// <summary>What could overturn what it concludes.</summary>
    private ImmutableArray<RobustnessLine> Robustness =>
        Own == Conclusion.NotAssessed ? [] : Conclusions.Robustness.Of(Criteria, Evidence);

    /// <summary>How many specimens would decide; null where each of several instruments needs a number of its own.</summary>
    private MoreSpecimens? MoreSpecimens =>
        Doubt.All.Any(reason => reason is PartsNotSupportedReason)
            ? null
            : SpecimensStillNeeded.Of(
                Own,
                Criteria,
                Doubt.All,
                Evidence.Data.Compared.Length,
                Evidence.Data.Errors.Counts.Days
            );

    /// <summary>The time point on one instrument, with its conclusion in that sequence.</summary>
    public ScopeTimePoint ConcludedOfPart(Conclusion conclusion) =>
        new(
            Evidence.Context.TimePoint,
            conclusion,
            Own,
            Evidence.Pairs.Count(pair => pair.IsDue),
            Evidence.Pairs.Count(pair => pair.CountsForAgreement),
            Criteria,
            Doubt.All
        )
        {
            Robustness = Robustness,
            MoreSpecimens = MoreSpecimens,
        };

    /// <summary>The time point with its conclusion in the sequence.</summary>
    /// <param name="conclusion">The conclusion.</param>
    /// <param name="planned">The planned number of specimens.</param>
    public Cell Concluded(Conclusion conclusion, int planned)
    {
        var (_, pairs, context) = Evidence;
        var data = Evidence.Data;
        return new(
            new CellKey(
                context.Analyte.Id,
                context.Group.Id,
                context.Storage.Id,
                context.TimePoint
            ),
            conclusion,
            Own,
            Disposition.Of(planned, pairs),
            Criteria,
            CellEstimates.Of(data, context.Protocol, context.Analyte),
            Robustness,
            pairs
        )
        {
            SideChanges = SideChange.Of(pairs, context),
            Doubts = Doubt.All,
            Controls = Controls,
            MoreSpecimens = MoreSpecimens,
        };
    }
}
