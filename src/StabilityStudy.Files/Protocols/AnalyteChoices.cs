using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads which analytes a criterion judges.</summary>
internal static class AnalyteChoices
{
    /// <summary>limits = { ANALYTE = "LIMIT" }.</summary>
    public static ImmutableArray<LimitChoice> ReadWithLimit(TomlTable criterion)
    {
        var table = criterion.RequireTable("limits", ProtocolKeys.CriterionLimits);
        if (criterion.IsSound("limits") && table.Keys.IsEmpty)
        {
            criterion.Fault(
                "limits",
                FileQueries.EmptyList,
                "",
                "The criterion names no analyte.",
                "Write limits = { ANALYTE = \"LIMIT\" }."
            );
        }

        return
        [
            .. table.Keys.Select(analyte => new LimitChoice(analyte, table.RequireText(analyte))),
        ];
    }

    /// <summary>analytes = ["ANALYTE"].</summary>
    public static ImmutableArray<LimitChoice> ReadWithoutLimit(TomlTable criterion)
    {
        var analytes = criterion.RequireTexts("analytes");
        if (analytes.Distinct(StringComparer.Ordinal).Count() < analytes.Length)
        {
            criterion.Fault(
                "analytes",
                ProtocolQueries.DuplicateId,
                "",
                "An analyte stands twice in \"analytes\".",
                "List each once."
            );
        }

        return [.. analytes.Select(analyte => new LimitChoice(analyte, null))];
    }
}
