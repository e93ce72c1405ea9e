using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for criteria that ask for less than is usual.</summary>
internal static class CriterionCautions
{
    private const double UsualConfidenceOfMean = 0.90;
    private const double UsualConfidenceOfShare = 0.95;
    private const decimal UsualSharePercent = 85;
    private const double TwoLooksOfMean = 0.95;
    private const double TwoLooksOfShare = 0.975;

    public static void Check(ProtocolDraft draft)
    {
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (criterion is not null)
            {
                CheckConfidence(table, criterion);
                CheckLooks(table, criterion, draft.Conduct.PlannedLooks);
                CheckShare(table, criterion);
                CheckRule(table, criterion);
            }
        }
    }

    private static void CheckConfidence(TomlTable table, Criterion criterion)
    {
        var usual = criterion.JudgesMean ? UsualConfidenceOfMean : UsualConfidenceOfShare;
        if (table.IsSound(CriterionKeys.Confidence) && criterion.ConfidenceLevel < usual)
        {
            table.Remark(
                CriterionKeys.Confidence,
                CautionQueries.LowConfidence,
                FormattableString.Invariant($"{criterion.ConfidenceLevel}"),
                FormattableString.Invariant(
                    $"The criterion \"{criterion.Id}\" asks for a confidence of {criterion.ConfidenceLevel}, less than the usual {usual:0.00}."
                )
            );
        }
    }

    /// <summary>Each of two looks may err, so each takes half of the chance.</summary>
    private static void CheckLooks(TomlTable table, Criterion criterion, int looks)
    {
        var least = criterion.JudgesMean ? TwoLooksOfMean : TwoLooksOfShare;
        if (
            looks > 1
            && table.IsSound(CriterionKeys.Confidence)
            && criterion.ConfidenceLevel < least
        )
        {
            table.Fault(
                CriterionKeys.Confidence,
                CautionQueries.LooksNeedConfidence,
                FormattableString.Invariant($"{criterion.ConfidenceLevel}"),
                FormattableString.Invariant(
                    $"The protocol plans two looks at the data, and the criterion \"{criterion.Id}\" has a confidence of {criterion.ConfidenceLevel}, too low for each of them."
                ),
                FormattableString.Invariant($"Write at least {least}, or looks = 1.")
            );
        }
    }

    private static void CheckShare(TomlTable table, Criterion criterion)
    {
        var key = CriterionKeys.ShareOf(criterion);
        if (
            table.IsSound(key)
            && criterion.SharePercentRequired is < UsualSharePercent and var share
        )
        {
            table.Remark(
                key,
                CautionQueries.LowShare,
                FormattableString.Invariant($"{share}"),
                FormattableString.Invariant(
                    $"The criterion \"{criterion.Id}\" lets more than {100 - UsualSharePercent} of 100 specimens disagree."
                )
            );
        }
    }

    private static void CheckRule(TomlTable table, Criterion criterion)
    {
        if (criterion.IsEstimateAlone)
        {
            table.Remark(
                CriterionKeys.Rule,
                CautionQueries.DecidedByEstimateAlone,
                "point only",
                $"The criterion \"{criterion.Id}\" looks at the estimate alone, which controls no error."
            );
        }
    }
}
