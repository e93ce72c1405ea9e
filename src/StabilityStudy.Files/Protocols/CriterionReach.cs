using System.Diagnostics;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
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
                criterion is null
                || RequiredShare(criterion) is not { } required
                || !table.IsSound(required.Key)
                || !table.IsSound(CriterionKeys.Confidence)
            )
            {
                continue;
            }

            var share = (double)required.Percent / 100;
            foreach (var (groupTable, group) in draft.Groups.Items)
            {
                if (
                    groupTable.IsSound(GroupKeys.Specimens)
                    && CriterionCoverage.AppliesTo(criterion, group)
                    && AcceptanceNumber.Of(group.Specimens, share, criterion.ConfidenceLevel)
                        is null
                )
                {
                    table.Remark(
                        required.Key,
                        ProtocolQueries.CriterionOutOfReach,
                        FormattableString.Invariant($"{required.Written}"),
                        FormattableString.Invariant(
                            $"With the {group.Specimens} specimens planned for \"{group.Id}\" the criterion cannot be met, even when none speaks against it."
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
                $"Plan at least {SmallestN.ForIndividual(0.5, 1, share, confidenceLevel, MostSearched)} specimens, or change the criterion before data are collected."
            );

    /// <summary>The key, the share that must be shown, and the number as it is written there.</summary>
    private static (Key Key, decimal Percent, decimal Written)? RequiredShare(
        Criterion criterion
    ) =>
        criterion switch
        {
            IndividualCriterion { Rule: DecisionRule.Confidence } item => (
                CriterionKeys.SharePercentMinimum,
                item.SharePercentMinimum,
                item.SharePercentMinimum
            ),
            ClassificationCriterion item => (
                CriterionKeys.SharePercentMinimum,
                item.SharePercentMinimum,
                item.SharePercentMinimum
            ),
            ReclassificationCriterion item => (
                CriterionKeys.SharePercentMaximum,
                100 - item.SharePercentMaximum,
                item.SharePercentMaximum
            ),
            BiasCriterion
            or IndividualCriterion { Rule: DecisionRule.PointOnly }
            or DecisionLevelCriterion
            or DriftCriterion => null,
            _ => throw new UnreachableException(),
        };
}
