using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Cli.Commands;

/// <summary>What a command says when queries stop the study.</summary>
internal static class StoppedStudy
{
    public static ExitCode Report(Terminal terminal, ImmutableArray<DataQuery> queries, bool json)
    {
        if (json)
        {
            QueryJson.Write(terminal, queries);
        }
        else
        {
            QueryListing.Write(terminal, queries);
            terminal.Error.WriteLine(
                "No report: answer the queries marked STOP first. Nothing was written."
            );
        }

        return ExitCode.StopQueries;
    }
}
