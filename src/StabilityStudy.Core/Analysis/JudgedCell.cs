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

    /// <summary>What its data alone conclude.</summary>
    public Conclusion Own { get; } = Doubt.Conclude(CellEvaluation.Conclude(Criteria));

    /// <summary>The time point with its conclusion in the sequence.</summary>
    public Cell Concluded(Conclusion conclusion, Storage storage)
    {
        var (_, pairs, context) = Evidence;
        var data = Evidence.Data;
        return new(
            new CellKey(context.Analyte.Id, context.Group.Id, storage.Id, context.TimePoint),
            conclusion,
            Own,
            Disposition.Of(context.Group.Specimens, pairs),
            Criteria,
            CellEstimates.Of(data, context.Protocol, context.Analyte),
            Own == Conclusion.NotAssessed ? [] : Robustness.Of(Criteria, Evidence),
            pairs
        )
        {
            SideChanges = SideChange.Of(pairs, context),
            Doubts = Doubt.All,
            Controls = Controls,
            MoreSpecimens = SpecimensStillNeeded.Of(
                Own,
                Criteria,
                Doubt.All,
                data.Compared.Length,
                data.Errors.Counts.Days
            ),
        };
    }
}
