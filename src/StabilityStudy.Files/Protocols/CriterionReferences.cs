using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that criteria refer to analytes, limits and groups that exist, and to limits that fit their scale.</summary>
internal static class CriterionReferences
{
    public static void Check(ProtocolDraft draft)
    {
        var analytes = draft.Analytes.Codes("id", analyte => analyte.Id);
        var limits = draft.Limits.Codes("id", limit => limit.Id);
        var groups = draft.Groups.Codes("id", group => group.Id);
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (criterion is null)
            {
                continue;
            }

            foreach (var choice in criterion.Limits)
            {
                References.Check(table, "limits", choice.Analyte, "analyte", analytes);
                if (choice.Limit is { } limit)
                {
                    References.Check(table, "limits", limit, "limit", limits);
                }
            }

            foreach (var group in criterion.Groups)
            {
                References.Check(table, "groups", group, "group", groups);
            }

            if (criterion is BiasCriterion bias && table.IsSound("scale"))
            {
                CheckScale(table, bias, draft.Limits.Values);
            }
        }
    }

    private static void CheckScale(
        TomlTable table,
        BiasCriterion bias,
        ImmutableArray<Limit> limits
    )
    {
        var used = limits.Where(limit =>
            bias.Limits.Any(choice =>
                string.Equals(choice.Limit, limit.Id, StringComparison.Ordinal)
            )
        );
        foreach (var limit in used)
        {
            var (fits, wanted) = bias.Scale switch
            {
                ChangeScale.Percent or ChangeScale.LogRatio => (
                    limit.AbsoluteInUnit is null,
                    "percent only"
                ),
                ChangeScale.Absolute => (limit.Percent is null, "absolute_in_unit only"),
                _ => (true, ""),
            };
            if (!fits)
            {
                table.Remark(
                    "scale",
                    ProtocolQueries.LimitDoesNotFitScale,
                    limit.Id,
                    $"On this scale the mean is held to a limit with {wanted}, and \"{limit.Id}\" is another.",
                    $"Use a limit with {wanted}, or the scale \"share\"."
                );
            }
        }
    }
}
