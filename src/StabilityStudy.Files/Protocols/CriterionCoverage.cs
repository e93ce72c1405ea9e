using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks at what the criteria leave out, for each analyte and the groups in which it is studied.</summary>
internal static class CriterionCoverage
{
    public static void Check(ProtocolDraft draft)
    {
        if (draft.Criteria.Values.Contains(null))
        {
            return;
        }

        foreach (var (table, analyte) in draft.Analytes.Items)
        {
            if (!table.IsSound(AnalyteKeys.Id))
            {
                continue;
            }

            Report(
                ProtocolQueries.AnalyteWithoutCriterion,
                where => $"No criterion covers {where}: it will be \"not assessed\".",
                covering => covering.IsEmpty
            );
            Report(
                ProtocolQueries.BiasOnly,
                where =>
                    $"Only the mean change of {where} is judged, and a mean can hide single large changes.",
                covering => !covering.IsEmpty && covering.All(item => item.JudgesMean)
            );
            Report(
                ProtocolQueries.IndividualOnly,
                where =>
                    $"The mean change of {where} is not judged, and all results may move the same way within the limit.",
                covering =>
                    covering.Any(item => item is IndividualCriterion)
                    && !covering.Any(item => item is BiasCriterion)
            );
            Report(
                ProtocolQueries.SidesOnly,
                where =>
                    $"No size of change of {where} is judged, only who changes side or class; far from a level results may change as they like.",
                covering =>
                    !covering.IsEmpty
                    && analyte.Categories.IsEmpty
                    && covering.All(item =>
                        item is ReclassificationCriterion or ClassificationCriterion
                    )
            );
            Report(
                ProtocolQueries.PointShareAlone,
                where =>
                    $"Single specimens of {where} are judged by the observed share alone, which controls no error.",
                covering =>
                    covering.OfType<IndividualCriterion>().Any()
                    && covering
                        .OfType<IndividualCriterion>()
                        .All(item => item.Rule == DecisionRule.PointOnly)
            );

            void Report(
                QueryKind kind,
                Func<string, string> message,
                Func<ImmutableArray<Criterion>, bool> isOpen
            )
            {
                var groups = draft
                    .Groups.Values.Where(group =>
                        group.Id.Length > 0
                        && IsStudiedIn(analyte, group)
                        && isOpen(Covering(draft, analyte, group))
                    )
                    .Select(group => group.Id)
                    .ToImmutableArray();
                if (!groups.IsEmpty)
                {
                    table.Remark(
                        AnalyteKeys.Id,
                        kind,
                        analyte.Id,
                        message($"{analyte.Id} ({string.Join(", ", groups)})")
                    );
                }
            }
        }
    }

    /// <summary>Whether a criterion applies to a group; without groups it applies to all.</summary>
    public static bool AppliesTo(Criterion criterion, PatientGroup group) =>
        criterion.AppliesTo(group.Id);

    /// <summary>Whether an analyte is studied in a group; without groups it is studied in all.</summary>
    public static bool IsStudiedIn(Analyte analyte, PatientGroup group) =>
        analyte.Groups.IsEmpty || analyte.Groups.Contains(group.Id, StringComparer.Ordinal);

    /// <summary>The criteria that an analyte has in a group.</summary>
    public static ImmutableArray<Criterion> Covering(
        ProtocolDraft draft,
        Analyte analyte,
        PatientGroup group
    ) =>
        [
            .. draft
                .Criteria.Values.OfType<Criterion>()
                .Where(criterion =>
                    AppliesTo(criterion, group)
                    && criterion.Limits.Any(choice => choice.Analyte == analyte.Id)
                ),
        ];
}
