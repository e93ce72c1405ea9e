using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Json;

/// <summary>Data queries with their words as a JSON document of their own, as <c>check --json</c> writes them.</summary>
public static class QueryDocument
{
    /// <summary>Writes the queries, those that stop first: UTF-8, indented, line feeds.</summary>
    public static byte[] Write(ImmutableArray<DataQuery> queries) =>
        AnalysisJson.Write(json =>
            QueryForms.DocumentForm.Write(json, [.. queries.OrderBy(query => query.Severity)])
        );
}
