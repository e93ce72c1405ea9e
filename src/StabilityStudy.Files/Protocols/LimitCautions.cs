using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for limits that are wide, or as wide for the mean as for one specimen.</summary>
internal static class LimitCautions
{
    public static void Check(ProtocolDraft draft)
    {
        CheckWidth(draft);
        CompareMeanWithOne(draft);
    }

    private static void CheckWidth(ProtocolDraft draft)
    {
        foreach (var (table, limit) in draft.Limits.Items)
        {
            var users = draft
                .Criteria.Values.OfType<Criterion>()
                .Where(criterion => criterion.Limits.Any(choice => choice.Limit == limit.Id))
                .ToArray();
            var (serves, widest) = users.Any(item => item.JudgesMean)
                ? ("a mean", WideLimits.PercentOfMean)
                : ("single specimens", WideLimits.PercentOfOne);
            if (users.Length > 0 && limit.Percent > widest)
            {
                table.Remark(
                    LimitKeys.Percent,
                    SharedKinds.WideLimit,
                    FormattableString.Invariant($"{limit.Percent}"),
                    FormattableString.Invariant(
                        $"The limit \"{limit.Id}\" of {limit.Percent} % is wide for {serves} (above {widest} %)."
                    )
                );
            }
        }
    }

    private static void CompareMeanWithOne(ProtocolDraft draft)
    {
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (criterion is not BiasCriterion bias)
            {
                continue;
            }

            foreach (var choice in bias.Limits)
            {
                var individual = draft
                    .Criteria.Values.OfType<IndividualCriterion>()
                    .SelectMany(item => item.Limits)
                    .Where(item => item.Analyte == choice.Analyte)
                    .Select(item => item.Limit)
                    .ToArray();
                if (individual.Contains(choice.Limit))
                {
                    table.Remark(
                        CriterionKeys.Limits,
                        CautionQueries.BiasLimitIsIndividual,
                        choice.Limit ?? "",
                        $"\"{choice.Limit}\" serves both the mean and single specimens of {choice.Analyte}; a regulatory or total limit must not serve as allowable bias."
                    );
                }
                else if (
                    Find(draft, choice.Limit) is { } ofMean
                    && individual.Any(id => Find(draft, id) is { } ofOne && Reaches(ofMean, ofOne))
                )
                {
                    table.Remark(
                        CriterionKeys.Limits,
                        CautionQueries.BiasLimitNotBelowIndividual,
                        ofMean.Id,
                        $"The mean of {choice.Analyte} may move as far as a single specimen: \"{ofMean.Id}\" leaves nothing for other errors."
                    );
                }
            }
        }
    }

    private static bool Reaches(Limit ofMean, Limit ofOne) =>
        ofMean.Percent >= ofOne.Percent || ofMean.AbsoluteInUnit >= ofOne.AbsoluteInUnit;

    private static Limit? Find(ProtocolDraft draft, string? id) =>
        draft.Limits.Values.FirstOrDefault(limit => limit.Id == id);
}
