using System.Collections.Immutable;
using System.Text.Json;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Json;

/// <summary>Data queries as a JSON document of their own, as <c>check --json</c> writes them.</summary>
/// <param name="Queries">Every query, those that stop first; the same shape as in analysis.json.</param>
public sealed record QueryDocument(ImmutableArray<DataQuery> Queries)
{
    /// <summary>Writes the queries: UTF-8, indented, line feeds.</summary>
    public static byte[] Write(ImmutableArray<DataQuery> queries) =>
        [
            .. JsonSerializer.SerializeToUtf8Bytes(
                new QueryDocument([.. queries.OrderBy(query => query.Severity)]),
                AnalysisJson.QueryDocumentType
            ),
            (byte)'\n',
        ];
}
