using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that each criterion can be computed: its limits fit its scale, and its analytes give what it judges.</summary>
internal static class CriterionFit
{
    public static void Check(ProtocolDraft draft)
    {
        var analytes = draft.Analytes.Values;
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            switch (criterion)
            {
                case null:
                    continue;
                case BiasCriterion bias when table.IsSound(CriterionKeys.Scale):
                    CheckLimits(table, bias, CriterionKeys.Scale, bias.Scale, draft.Limits.Values);
                    break;
                case DriftCriterion drift:
                    CheckLimits(
                        table,
                        drift,
                        CriterionKeys.Limits,
                        ChangeScale.Percent,
                        draft.Limits.Values
                    );
                    break;
                default:
                    break;
            }

            foreach (
                var analyte in analytes.Where(analyte =>
                    criterion.Limits.Any(choice => choice.Analyte == analyte.Id)
                )
            )
            {
                CheckResults(table, criterion, analyte);
                CheckLevels(table, criterion, analyte);
                if (criterion is ReclassificationCriterion { Near: { } near } sides)
                {
                    CheckNear(table, sides, near, analyte, draft.Groups.Values);
                }
            }
        }
    }

    private static void CheckLimits(
        TomlTable table,
        Criterion criterion,
        Key key,
        ChangeScale scale,
        ImmutableArray<Limit> limits
    )
    {
        var used = limits.Where(limit =>
            criterion.Limits.Any(choice =>
                string.Equals(choice.Limit, limit.Id, StringComparison.Ordinal)
            )
        );
        foreach (var limit in used)
        {
            var (fits, wanted) = scale switch
            {
                ChangeScale.Percent or ChangeScale.LogRatio => (
                    limit.AbsoluteInUnit is null,
                    "percent only"
                ),
                ChangeScale.Absolute => (limit.Percent is null, "absolute_in_unit only"),
                ChangeScale.Share => (true, ""),
            };
            if (!fits)
            {
                table.Remark(
                    key,
                    ProtocolQueries.LimitDoesNotFitScale,
                    limit.Id,
                    criterion is DriftCriterion
                        ? $"Drift is held to a limit with percent only, and \"{limit.Id}\" is another."
                        : $"On this scale the mean is held to a limit with {wanted}, and \"{limit.Id}\" is another.",
                    criterion is DriftCriterion
                        ? "Use a limit with percent only."
                        : $"Use a limit with {wanted}, or the scale \"share\"."
                );
            }
        }
    }

    private static void CheckResults(TomlTable table, Criterion criterion, Analyte analyte)
    {
        var isQualitative = !analyte.Categories.IsEmpty;
        if (criterion is not ClassificationCriterion)
        {
            if (isQualitative)
            {
                Misfit(
                    table,
                    CriterionKeys.AnalytesOf(criterion.Kind),
                    analyte,
                    $"{analyte.Id} has categories, and this criterion judges numbers.",
                    "Use a criterion of kind \"classification\"."
                );
            }

            return;
        }

        if (isQualitative && table.Has(CriterionKeys.Cutoffs))
        {
            Misfit(
                table,
                CriterionKeys.Cutoffs,
                analyte,
                $"{analyte.Id} has categories, which need no cutoffs.",
                "Remove the cutoffs, or judge numbers by a criterion of their own."
            );
        }
        else if (!isQualitative && !table.Has(CriterionKeys.Cutoffs))
        {
            Misfit(
                table,
                CriterionKeys.Cutoffs,
                analyte,
                $"{analyte.Id} gives numbers, and nothing says where its classes begin.",
                "Add cutoffs = [1.2], or give the analyte categories."
            );
        }
    }

    private static void CheckLevels(TomlTable table, Criterion criterion, Analyte analyte)
    {
        if (
            criterion.JudgedLevels is { IsEmpty: true }
            && !table.Has(CriterionKeys.Levels)
            && analyte.DecisionLevels.IsEmpty
        )
        {
            table.Remark(
                CriterionKeys.Levels,
                ProtocolQueries.NoDecisionLevel,
                analyte.Id,
                $"The criterion judges decision levels, and {analyte.Id} has none."
            );
        }
    }

    /// <summary>A range of near baselines must hold those that can cross each level, and no more of them than are planned.</summary>
    private static void CheckNear(
        TomlTable table,
        ReclassificationCriterion criterion,
        NearRange near,
        Analyte analyte,
        ImmutableArray<PatientGroup> groups
    )
    {
        var levels = criterion.Levels.IsEmpty ? analyte.DecisionLevels : criterion.Levels;
        var misplaced = levels
            .Where(level =>
                criterion.Direction switch
                {
                    SideDirection.Down => near.Lowest < level,
                    SideDirection.Up => near.Highest >= level,
                    SideDirection.Both => level <= near.Lowest || level > near.Highest,
                }
            )
            .ToArray();
        if (misplaced.Length > 0)
        {
            table.Remark(
                CriterionKeys.Near,
                ProtocolQueries.NearRangeMisplaced,
                FormattableString.Invariant($"{near.Lowest} to {near.Highest}"),
                FormattableString.Invariant(
                    $"A change of side that counts cannot begin at every baseline from {near.Lowest} to {near.Highest}; level: {string.Join(", ", misplaced.Select(level => level.ToString(CultureInfo.InvariantCulture)))}."
                )
            );
        }

        foreach (
            var group in groups.Where(group =>
                CriterionCoverage.AppliesTo(criterion, group)
                && CriterionCoverage.IsStudiedIn(analyte, group)
                && near.SpecimensMinimum > group.Specimens
            )
        )
        {
            table.Remark(
                CriterionKeys.Near,
                ProtocolQueries.CriterionOutOfReach,
                FormattableString.Invariant($"{near.SpecimensMinimum}"),
                FormattableString.Invariant(
                    $"{near.SpecimensMinimum} specimens near the levels are asked for, and only {group.Specimens} are planned for \"{group.Id}\"."
                ),
                "Plan at least as many specimens for the group."
            );
        }
    }

    private static void Misfit(
        TomlTable table,
        Key key,
        Analyte analyte,
        string message,
        string? action = null
    ) => table.Remark(key, ProtocolQueries.CriterionDoesNotFitAnalyte, analyte.Id, message, action);
}
