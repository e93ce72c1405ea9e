using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;

namespace StabilityStudy.Files.Protocols;

/// <summary>
/// Looks for means that no criterion at decision levels stands beside where the change may depend on the level: patients on heparin or a vitamin K antagonist, and ranges wider than threefold. Such a protocol is locked only with its reason.
/// </summary>
internal static class LevelsNeeded
{
    /// <summary>Over a wider range a mean says little of its ends.</summary>
    private const decimal WidestRatio = 3;

    /// <summary>Words of a group's code or name, where its anticoagulant is not stated.</summary>
    private static readonly ImmutableArray<string> s_words =
    [
        "heparin",
        "ufh",
        "lmwh",
        "vka",
        "vitamin k",
        "warfarin",
        "coumarin",
        "phenprocoumon",
        "acenocoumarol",
    ];

    public static void Check(ProtocolDraft draft)
    {
        if (draft.Criteria.Values.Contains(null))
        {
            return;
        }

        var means =
            from item in draft.Analytes.Items
            where item.Table.IsSound(AnalyteKeys.Id)
            from patients in draft.Groups.Values
            where CriterionCoverage.IsStudiedIn(item.Value, patients)
            let why = Why(item.Value, patients)
            where why is not null && !AreLevelsJudged(draft, item.Value, patients)
            from mean in CriterionCoverage.Covering(draft, item.Value, patients)
            where mean is BiasCriterion
            select (
                item.Table,
                item.Value.Id,
                Mean: (BiasCriterion)mean,
                Where: $"{item.Value.Id}, group {patients.Id}: criterion \"{mean.Id}\" judges the mean, and no criterion looks at decision levels although {why}"
            );
        foreach (var (table, analyte, mean, where) in means)
        {
            Remark(table, analyte, mean, where);
        }
    }

    private static void Remark(TomlTable table, string analyte, BiasCriterion mean, string where)
    {
        if (mean.WithoutLevels is { } reason)
        {
            table.Remark(
                AnalyteKeys.Id,
                ProtocolQueries.MeanWithoutLevelsStated,
                analyte,
                $"{where}. Stated reason: {reason}"
            );
        }
        else
        {
            table.Remark(
                AnalyteKeys.Id,
                ProtocolQueries.MeanWithoutLevels,
                analyte,
                $"{where}, so that a change at one end of the range can hide in it.",
                "Add a criterion of kind \"decision-level\" or \"reclassification\" for analyte and group, or say in without_levels of the mean's criterion why none is needed."
            );
        }
    }

    /// <summary>Why levels are asked for; null when they are not.</summary>
    private static string? Why(Analyte analyte, PatientGroup group)
    {
        if (group.Anticoagulant is Anticoagulant.Heparin or Anticoagulant.VitaminKAntagonist)
        {
            return $"its patients are on {(group.Anticoagulant == Anticoagulant.Heparin ? "heparin" : "a vitamin K antagonist")}";
        }

        if (
            group.Anticoagulant is null
            && s_words.Any(word =>
                group.Id.Contains(word, StringComparison.OrdinalIgnoreCase)
                || group.Name.Contains(word, StringComparison.OrdinalIgnoreCase)
            )
        )
        {
            return "by code and name its patients are on heparin or a vitamin K antagonist (state anticoagulant if they are not)";
        }

        return
            analyte.PlannedRanges.FirstOrDefault(range => range.Group == group.Id) is { } planned
            && planned.Highest > WidestRatio * planned.Lowest
            ? FormattableString.Invariant(
                $"the planned range from {planned.Lowest} to {planned.Highest} is wider than threefold"
            )
            : null;
    }

    /// <summary>Whether levels of the analyte, or of a ratio that is computed from it, are judged in the group.</summary>
    private static bool AreLevelsJudged(ProtocolDraft draft, Analyte analyte, PatientGroup group) =>
        draft
            .Analytes.Values.Where(other =>
                other.Id == analyte.Id
                || (other.RatioOf == analyte.Id && CriterionCoverage.IsStudiedIn(other, group))
            )
            .SelectMany(other => CriterionCoverage.Covering(draft, other, group))
            .Any(criterion => criterion.JudgedLevels is not null);
}
