using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for analytes of which not enough is stated to see results that are too good.</summary>
internal static class AnalyteCautions
{
    public static void Check(ProtocolDraft draft)
    {
        CheckImprecision(draft);
        CheckLevels(draft);
    }

    private static void CheckLevels(ProtocolDraft draft)
    {
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            var levels = criterion?.JudgedLevels ?? [];
            var left = draft
                .Analytes.Values.Where(analyte =>
                    !levels.IsEmpty && criterion!.Limits.Any(choice => choice.Analyte == analyte.Id)
                )
                .SelectMany(analyte =>
                    analyte.DecisionLevels.Where(level =>
                        IsInRange(draft, analyte, criterion!, level)
                    )
                )
                .Except(levels)
                .Select(level => FormattableString.Invariant($"{level}"))
                .ToArray();
            if (left.Length > 0)
            {
                table.Remark(
                    CriterionKeys.Levels,
                    CautionQueries.LevelNotJudged,
                    "",
                    $"The criterion \"{criterion!.Id}\" does not look at every decision level of its analyte; left out: {string.Join(", ", left)}."
                );
            }
        }
    }

    /// <summary>Whether a level that no other criterion looks at lies in what some group of the criterion is planned to span, or has no planned span.</summary>
    private static bool IsInRange(
        ProtocolDraft draft,
        Analyte analyte,
        Criterion criterion,
        decimal level
    ) =>
        draft
            .Groups.Values.Where(group =>
                CriterionCoverage.AppliesTo(criterion, group)
                && CriterionCoverage.IsStudiedIn(analyte, group)
                && !IsJudgedByAnother(draft, analyte, group, criterion, level)
            )
            .Any(group => analyte.IsPlannedFor(level, group.Id));

    /// <summary>Whether another criterion looks at the level in the group, so that it is not left out.</summary>
    private static bool IsJudgedByAnother(
        ProtocolDraft draft,
        Analyte analyte,
        PatientGroup group,
        Criterion criterion,
        decimal level
    ) =>
        CriterionCoverage
            .Covering(draft, analyte, group)
            .Any(other =>
                other != criterion
                && other.JudgedLevels is { } levels
                && (levels.IsEmpty ? analyte.DecisionLevels : levels).Contains(level)
            );

    private static void CheckImprecision(ProtocolDraft draft)
    {
        var silent = draft
            .Analytes.Items.Where(part =>
                part.Value.Categories.IsEmpty && !part.Table.Has(AnalyteKeys.CvPercent)
            )
            .ToArray();
        if (silent is [var first, ..])
        {
            first.Table.Remark(
                AnalyteKeys.CvPercent,
                CautionQueries.BetweenRunCvNotStated,
                "",
                $"The variation between runs is not stated, so copied results cannot be told from measurements: {string.Join(", ", silent.Select(part => part.Value.Id))}."
            );
        }
    }
}
