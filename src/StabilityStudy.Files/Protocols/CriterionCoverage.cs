using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks at what the criteria leave out.</summary>
internal static class CriterionCoverage
{
    public static void Check(ProtocolDraft draft)
    {
        foreach (var (table, analyte) in draft.Analytes.Items)
        {
            foreach (var group in draft.Groups.Values)
            {
                if (
                    !table.IsSound("id")
                    || group.Id.Length == 0
                    || draft.Criteria.Values.Contains(null)
                )
                {
                    continue;
                }

                var covering = draft
                    .Criteria.Values.OfType<Criterion>()
                    .Where(criterion => Covers(criterion, analyte, group))
                    .ToArray();
                if (covering.Length == 0)
                {
                    table.Remark(
                        "id",
                        ProtocolQueries.AnalyteWithoutCriterion,
                        analyte.Id,
                        $"No criterion covers {analyte.Id} in the group \"{group.Id}\": it will be \"not assessed\".",
                        "Add the analyte to a criterion if a conclusion is wanted."
                    );
                }
                else if (covering.All(criterion => criterion is BiasCriterion))
                {
                    table.Remark(
                        "id",
                        ProtocolQueries.BiasOnly,
                        analyte.Id,
                        $"Only the mean change of {analyte.Id} in the group \"{group.Id}\" is judged, and a mean can hide single large changes.",
                        "Add a criterion of kind \"individual\"."
                    );
                }
            }
        }
    }

    /// <summary>Whether a criterion judges an analyte in a group.</summary>
    public static bool Covers(Criterion criterion, Analyte analyte, PatientGroup group) =>
        criterion.Limits.Any(choice =>
            string.Equals(choice.Analyte, analyte.Id, StringComparison.Ordinal)
        ) && AppliesTo(criterion, group);

    /// <summary>Whether a criterion applies to a group; without groups it applies to all.</summary>
    public static bool AppliesTo(Criterion criterion, PatientGroup group) =>
        criterion.Groups.IsEmpty || criterion.Groups.Contains(group.Id, StringComparer.Ordinal);
}
