using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>A paragraph on the number of specimens for the protocol.</summary>
internal static class PlanParagraph
{
    public static string Of(StudyPlan plan) =>
        string.Join(
            " ",
            PlanAnswer
                .Material(plan)
                .Prepend("Number of specimens.")
                .Concat(Failures(plan))
                .Append(PlanAnswer.Of(plan))
                .Concat(PlanReservations.Of(plan))
                .Concat(PlanSuppositions.Expected(plan))
                .Append(PlanSuppositions.Simulated(plan))
                .Concat(PlanSuppositions.Supposed(plan))
                .Append(PlanSuppositions.LeftOut)
        );

    /// <summary>How many specimens may fail, said once where it is the same for several rows.</summary>
    public static IEnumerable<string> Failures(StudyPlan plan) =>
        plan
            .Rows.SelectMany(row =>
                row.Shares.Select(share =>
                    (
                        share.Criterion,
                        Said: PlanDetailBlocks.Allowed(row, share.Criterion),
                        Analyte: row.Analyte.Id
                    )
                )
            )
            .GroupBy(item => (item.Criterion, item.Said))
            .Select(same =>
                plan.Protocol.Analytes.Length > 1
                    ? $"{same.Key.Criterion} ({string.Join(", ", same.Select(item => item.Analyte).Distinct())}): {same.Key.Said}."
                    : $"{same.Key.Criterion}: {same.Key.Said}."
            );
}
