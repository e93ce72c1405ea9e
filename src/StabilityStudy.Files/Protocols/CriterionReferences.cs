namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that criteria refer to analytes, limits and groups that exist.</summary>
internal static class CriterionReferences
{
    public static void Check(ProtocolDraft draft)
    {
        var analytes = draft.Analytes.Codes(AnalyteKeys.Id, analyte => analyte.Id);
        var limits = draft.Limits.Codes(LimitKeys.Id, limit => limit.Id);
        var groups = draft.Groups.Codes(GroupKeys.Id, group => group.Id);
        foreach (var (table, criterion) in draft.Criteria.Items)
        {
            if (criterion is null)
            {
                continue;
            }

            foreach (var choice in criterion.Limits)
            {
                References.Check(
                    table,
                    CriterionKeys.AnalytesOf(criterion.Kind),
                    choice.Analyte,
                    "analyte",
                    analytes
                );
                References.Check(table, CriterionKeys.Limits, choice.Limit ?? "", "limit", limits);
            }

            foreach (var group in criterion.Groups)
            {
                References.Check(table, CriterionKeys.Groups, group, "group", groups);
            }
        }
    }
}
