using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Json;

namespace StabilityStudy.Cli.Console;

/// <summary>Data queries as JSON.</summary>
internal static class QueryJson
{
    public static void Write(Terminal terminal, ImmutableArray<DataQuery> queries) =>
        terminal.WriteJson(QueryDocument.Write(queries));
}
