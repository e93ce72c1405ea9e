using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Cli.Commands;

/// <summary>plan: writes the protocol as a document to be signed before the first collection.</summary>
internal static class PlanCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var document = new Option<string>("--document")
        {
            Description = "Where to write the protocol as a PDF, such as protocol.pdf.",
            HelpName = "FILE",
            Required = true,
        };
        var paper = PaperOption.Create();
        var command = new Command(
            "plan",
            "Before there are data: write the protocol as a document that the author and the one who decides read and sign, which approves limits and criteria before the first collection.\n\nExample:\n  stability-study plan my-study --document my-study/out/protocol.pdf\n  stability-study sign my-study/out/protocol.pdf --role author --key me.p12\n\nWhen everybody in it has signed, give it to lock with --signed-protocol."
        )
        {
            study,
            document,
            paper,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(study),
                parsed.GetRequiredValue(document),
                PaperOption.Of(parsed, paper)
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string folder, string target, PaperSize paper)
    {
        if (!string.Equals(Path.GetExtension(target), ".pdf", StringComparison.OrdinalIgnoreCase))
        {
            throw new UsageException(
                $"The protocol document is a PDF. Name it like {Path.ChangeExtension(target, ".pdf")}."
            );
        }

        _ = ReportTarget.AnalysisBeside(folder, target, target);
        var outcome = StudyPipeline.RenderProtocol(StudyFolder.Read(folder), paper);
        if (!outcome.TryGet(out var drawn))
        {
            return StoppedStudy.Report(terminal, outcome.Queries, json: false);
        }

        if (!outcome.Queries.IsEmpty)
        {
            QueryListing.Write(terminal, outcome.Queries);
            terminal.Out.WriteLine();
        }

        AtomicFile.Write((target, drawn.Pdf));
        terminal.Out.WriteLine(target);
        return ExitCode.Done;
    }
}
