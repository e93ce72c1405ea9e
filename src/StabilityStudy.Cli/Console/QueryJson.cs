using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Json;

namespace StabilityStudy.Cli.Console;

/// <summary>Data queries as JSON.</summary>
internal static class QueryJson
{
    public static void Write(TextWriter writer, ImmutableArray<DataQuery> queries) =>
        writer.WriteLine(Encoding.UTF8.GetString(QueryDocument.Write(queries)).TrimEnd('\n'));
}
