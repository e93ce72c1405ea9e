using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>analyze: conclusions and the figures behind them; puts the look on record, and writes nothing else.</summary>
internal static class AnalyzeCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = StudyArgument.Json(
            "Write everything as JSON, figures to 11 digits (the content of analysis.json)."
        );
        var simulate = new Option<int?>("--simulate")
        {
            Description =
                "Also simulate this many studies like this one for each of three true changes, to show how often each time point would be supported. From 1 to 100,000; 1,000 take some seconds a time point.",
            HelpName = "STUDIES",
        };
        var interim = Looking.Interim();
        var require = StudyArgument.RequireSupported();
        var command = new Command(
            "analyze",
            "Show the conclusions and the figures that decided them. Puts the look on record in record.jsonl, and writes nothing else.\n\nExample:\n  stability-study analyze my-study"
        )
        {
            study,
            json,
            simulate,
            interim,
            require,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(study),
                parsed.GetValue(json),
                parsed.GetValue(simulate),
                parsed.GetValue(interim),
                parsed.GetValue(require)
            )
        );
        return command;
    }

    private static ExitCode Run(
        Terminal terminal,
        string folder,
        bool json,
        int? simulate,
        bool interim,
        bool require
    )
    {
        if (simulate is < 1 or > StudyPower.MostStudies)
        {
            throw new UsageException("--simulate needs a number of studies from 1 to 100,000.");
        }

        // Nothing here holds the files, which may be large, while they are analyzed.
        var outcome = StudyPipeline.AnalyzeFigures(StudyFolder.Read(folder));
        if (!outcome.TryGet(out var analyzed))
        {
            return StoppedStudy.Report(terminal, outcome.Queries, json);
        }

        if (!Looking.MayShow(terminal, analyzed, interim, json))
        {
            return SupportedRequirement.Check(analyzed, require);
        }

        var look = Looking.With(
            new RecordEntry(
                RecordAction.Analyze,
                terminal.Clock.GetLocalNow(),
                terminal.User,
                ToolVersion.Named,
                analyzed.Analysis.Identity.Inputs,
                []
            ),
            RecordFile.In(folder),
            analyzed.Analysis
        );
        if (!look.Look.IsEmpty)
        {
            // Before anything is shown: what cannot go on record is not looked at.
            RecordFile.Write(folder, look);
        }

        var shown = simulate is { } studies ? StudyPipeline.WithPower(analyzed, studies) : analyzed;
        if (json)
        {
            terminal.WriteJson(screen => StudyPipeline.WriteAnalysis(shown, screen));
        }
        else
        {
            terminal.Out.Write(StudyPipeline.Summarize(shown, terminal.Width) + '\n');
        }

        return SupportedRequirement.Check(analyzed, require);
    }
}
