using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Protocols;

/// <summary>
/// Finds individual criteria that the planned number of specimens cannot meet even when none lies outside. With 0 of n
/// outside, the exact one-sided lower bound of the share inside is (1 − confidence)^(1/n) (Clopper and Pearson,
/// Biometrika 26 (1934) 404–413).
/// </summary>
internal static class CriterionReach
{
    private const int MostSearched = 1_000_000;

    public static void Check(ProtocolDraft draft)
    {
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (
                criterion is not IndividualCriterion individual
                || !table.IsSound("share_percent_min")
                || !table.IsSound("confidence")
            )
            {
                continue;
            }

            foreach (var (groupTable, group) in draft.Groups.Items)
            {
                if (
                    groupTable.IsSound("specimens")
                    && CriterionCoverage.AppliesTo(individual, group)
                    && BestLowerBound(group.Specimens, individual) < Share(individual)
                )
                {
                    table.Remark(
                        "share_percent_min",
                        ProtocolQueries.CriterionOutOfReach,
                        FormattableString.Invariant($"{individual.SharePercentMinimum}"),
                        FormattableString.Invariant(
                            $"With the {group.Specimens} specimens planned for \"{group.Id}\" and none outside, the lower bound is {100 * BestLowerBound(group.Specimens, individual):0.0} %, below {individual.SharePercentMinimum} %: the criterion cannot be met."
                        ),
                        FormattableString.Invariant(
                            $"Plan at least {FewestSpecimens(individual)} specimens, or change the criterion before data are collected."
                        )
                    );
                }
            }
        }
    }

    private static double Share(IndividualCriterion criterion) =>
        (double)criterion.SharePercentMinimum / 100;

    private static double BestLowerBound(int specimens, IndividualCriterion criterion) =>
        Math.Pow(1 - criterion.ConfidenceLevel, 1.0 / specimens);

    private static int FewestSpecimens(IndividualCriterion criterion)
    {
        var fewest = (int)
            Math.Min(
                MostSearched,
                Math.Floor(Math.Log(1 - criterion.ConfidenceLevel) / Math.Log(Share(criterion)))
            );
        while (fewest < MostSearched && BestLowerBound(fewest, criterion) < Share(criterion))
        {
            fewest++;
        }

        return fewest;
    }
}
