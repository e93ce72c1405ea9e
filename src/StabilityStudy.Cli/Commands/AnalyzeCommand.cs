using System.CommandLine;
using System.Text;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>analyze: conclusions and the figures behind them; writes nothing.</summary>
internal static class AnalyzeCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = StudyArgument.Json(
            "Write everything, unrounded, as JSON (the content of analysis.json)."
        );
        var require = StudyArgument.RequireSupported();
        var command = new Command(
            "analyze",
            "Show the conclusions and the figures that decided them. Writes no file.\n\nExample:\n  stability-study analyze my-study"
        )
        {
            study,
            json,
            require,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(study),
                parsed.GetValue(json),
                parsed.GetValue(require)
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string folder, bool json, bool require)
    {
        var outcome = StudyPipeline.Analyze(StudyFolder.Read(folder));
        if (!outcome.TryGet(out var analyzed))
        {
            return StoppedStudy.Report(terminal, outcome.Queries, json);
        }

        terminal.Out.WriteLine(
            json
                ? Encoding.UTF8.GetString(StudyPipeline.WriteAnalysis(analyzed).Span).TrimEnd('\n')
                : StudyPipeline.Summarize(analyzed, terminal.Width)
        );
        return SupportedRequirement.Check(analyzed, require);
    }
}
