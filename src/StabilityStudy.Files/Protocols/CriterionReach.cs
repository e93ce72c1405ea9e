using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Files.Protocols;

/// <summary>
/// Finds criteria on a share that the planned number of specimens cannot meet even when none speaks against it, by the
/// same exact rule by which the criterion is judged.
/// </summary>
internal static class CriterionReach
{
    private const int MostSearched = 1_000_000;

    public static void Check(ProtocolDraft draft)
    {
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (
                criterion is not { IsEstimateAlone: false, SharePercentRequired: { } required }
                || !table.IsSound(CriterionKeys.ShareOf(criterion))
                || !table.IsSound(CriterionKeys.Confidence)
            )
            {
                continue;
            }

            var key = CriterionKeys.ShareOf(criterion);
            var share = (double)required / 100;
            var near = (criterion as ReclassificationCriterion)?.Near?.SpecimensMinimum;
            foreach (var (groupTable, group) in draft.Groups.Items)
            {
                var counted = Math.Min(group.Specimens, near ?? group.Specimens);
                if (
                    groupTable.IsSound(GroupKeys.Specimens)
                    && CriterionCoverage.AppliesTo(criterion, group)
                    && AcceptanceNumber.Of(counted, share, criterion.ConfidenceLevel) is null
                )
                {
                    table.Remark(
                        key,
                        ProtocolQueries.CriterionOutOfReach,
                        FormattableString.Invariant(
                            $"{(key == CriterionKeys.SharePercentMaximum ? 100 - required : required)}"
                        ),
                        FormattableString.Invariant(
                            $"With the {counted} specimens planned for \"{group.Id}\"{(near is null ? "" : " near the levels")} the criterion cannot be met, even when none speaks against it."
                        ),
                        Advice(share, criterion.ConfidenceLevel)
                    );
                }
            }
        }
    }

    private static string Advice(double share, double confidenceLevel) =>
        AcceptanceNumber.Of(MostSearched, share, confidenceLevel) is null
            ? "Change the criterion before data are collected; no study is large enough for it."
            : FormattableString.Invariant(
                $"Plan at least {SmallestN.Reaching(0.5, n => IndividualPower.Of(n, 1, share, confidenceLevel), 1, MostSearched)} specimens, or change the criterion before data are collected."
            );
}
