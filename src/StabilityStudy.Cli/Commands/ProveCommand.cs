using System.CommandLine;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Cli.Help;
using StabilityStudy.Pipeline.Proving;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Cli.Commands;

/// <summary>prove: holds the installed program to everything whose answer is known.</summary>
internal static class ProveCommand
{
    private const string Extension = ".pdf";

    public static Command Create(Terminal terminal)
    {
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Also write the result as a PDF: each figure with its source, expected, found and tolerance, where and when it was run, and room for signatures by hand.",
            HelpName = "FILE",
        };
        var by = new Option<string?>("--by")
        {
            Description = "Who runs it; the account at this computer when not given.",
            HelpName = "NAME",
        };
        var paper = PaperOption.Create();
        var json = StudyArgument.Json("Write what was found as JSON.");
        var command = new Command(
            "prove",
            "Show that the program computes on this computer what is known: it runs published data sets, verifies signed reports of earlier releases, finds each changed byte in them, and draws a report whose every byte is known, under several cultures. The dated result is for the file in which a laboratory keeps the validation of its software. Exit code 4 when a figure does not agree.\n\nExample:\n  stability-study prove -o proof.pdf --by \"Lab Scientist One\""
        )
        {
            output,
            by,
            paper,
            json,
        };
        command.SetAction(parsed =>
        {
            var target = Target(parsed.GetValue(output));
            var run = Here(terminal, TextOption.OneLine(parsed.GetValue(by), by.Name));
            return (int)Tell(
                terminal,
                ProgramProving.Run(terminal.Progress),
                run,
                target,
                PaperOption.Of(parsed, paper),
                parsed.GetValue(json)
            );
        });
        return command;
    }

    /// <summary>Writes what was found.</summary>
    internal static ExitCode Tell(
        Terminal terminal,
        ProgramProof proof,
        ProofRun run,
        string? target,
        PaperSize paper,
        bool json
    )
    {
        if (target is not null)
        {
            AtomicFile.Write((target, ProgramProving.Pdf(proof, run, paper)));
        }

        if (json)
        {
            ProofJson.Write(terminal, proof, run);
        }
        else
        {
            ProofListing.Write(terminal, proof, target);
        }

        return proof.Agrees ? ExitCode.Done : ExitCode.VerificationFailed;
    }

    private static string? Target(string? path) =>
        path is null ? null
        : !string.Equals(Path.GetExtension(path), Extension, StringComparison.OrdinalIgnoreCase)
            ? throw new UsageException(
                $"The result is a PDF. Name it like {Path.ChangeExtension(path, Extension)}."
            )
        : Directory.Exists(path)
            ? throw new UsageException($"{path} is a folder. Give the path of a file.")
        : SignedFile.IsAt(path)
            ? throw new UsageException(
                $"{path} holds a signature, which the result would destroy. Move it, or write elsewhere with --output."
            )
        : path;

    /// <summary>Where, when and by whom it is run.</summary>
    private static ProofRun Here(Terminal terminal, string? by) =>
        new(
            ShowVersion.Line,
            RuntimeInformation.OSDescription,
            RuntimeInformation.ProcessArchitecture.ToString(),
            RuntimeInformation.FrameworkDescription
                + (
                    RuntimeFeature.IsDynamicCodeCompiled
                        ? ", compiled just in time"
                        : ", native program"
                ),
            CultureInfo.CurrentCulture.Name is { Length: > 0 } name ? name : "invariant",
            terminal.Clock.GetLocalNow(),
            terminal.Clock.LocalTimeZone.Id,
            by ?? $"account \"{terminal.User}\" at this computer"
        );
}
