using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads which analytes a criterion judges.</summary>
internal static class AnalyteChoices
{
    /// <summary>limits = { ANALYTE = "LIMIT" }.</summary>
    public static ImmutableArray<LimitChoice> ReadWithLimit(TomlTable criterion)
    {
        var table = criterion.RequireTable(CriterionKeys.Limits);
        ImmutableArray<Key<string>> analytes =
        [
            .. table.KnownKeys.Select(name => new Key<string>(
                name,
                Need.Required,
                ValueForms.Text,
                "",
                ""
            )),
        ];
        if (criterion.IsSound(CriterionKeys.Limits) && analytes.IsEmpty)
        {
            criterion.Fault(
                CriterionKeys.Limits,
                FileQueries.EmptyList,
                "",
                "The criterion names no analyte.",
                "Write limits = { ANALYTE = \"LIMIT\" }."
            );
        }

        return [.. analytes.Select(analyte => new LimitChoice(analyte.Name, table.Read(analyte)))];
    }

    /// <summary>analytes = ["ANALYTE"].</summary>
    public static ImmutableArray<LimitChoice> ReadWithoutLimit(TomlTable criterion) =>
        [
            .. criterion
                .Read(CriterionKeys.Analytes)
                .Select(analyte => new LimitChoice(analyte, null)),
        ];
}
