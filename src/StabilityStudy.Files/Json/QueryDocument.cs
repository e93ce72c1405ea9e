using StabilityStudy.Core.Collecting;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Json;

/// <summary>Data queries with their words as a JSON document of their own.</summary>
public static class QueryDocument
{
    /// <summary>Writes what check shows: how far the collection is, then the queries, then those that are answered.</summary>
    public static byte[] WriteChecked(
        CollectionInventory? inventory,
        ImmutableArray<DataQuery> queries,
        ImmutableArray<DataQuery> answered
    ) =>
        AnalysisJson.Write(json =>
            CollectionForms.DocumentForm.Write(
                json,
                (inventory, [.. queries.OrderBy(query => query.Severity)], answered)
            )
        );

    /// <summary>Writes the queries, those that stop first: UTF-8, indented, line feeds.</summary>
    public static byte[] Write(ImmutableArray<DataQuery> queries) =>
        AnalysisJson.Write(json =>
            QueryForms.DocumentForm.Write(json, [.. queries.OrderBy(query => query.Severity)])
        );
}
