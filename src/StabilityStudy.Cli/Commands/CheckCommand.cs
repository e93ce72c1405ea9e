using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>check: every data query, no change and no figure shown.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = StudyArgument.Json("Write the queries as JSON.");
        var command = new Command(
            "check",
            "List every data query: what was read where, what is wrong, what to do. Shows no change and no figure; a query quotes only what it asks about.\n\nExample:\n  stability-study check my-study"
        )
        {
            study,
            json,
        };
        command.SetAction(parsed =>
            (int)Run(terminal, parsed.GetRequiredValue(study), parsed.GetValue(json))
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string folder, bool json)
    {
        var outcome = StudyPipeline.Check(StudyFolder.Read(folder));
        if (json)
        {
            QueryJson.Write(terminal, outcome.Queries);
        }
        else
        {
            QueryListing.Write(terminal, outcome.Queries);
        }

        return outcome.TryGet(out _) ? ExitCode.Done : ExitCode.StopQueries;
    }
}
