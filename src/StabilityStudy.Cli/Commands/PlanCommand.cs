using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Plan;

namespace StabilityStudy.Cli.Commands;

/// <summary>plan: what a study takes and what it can show, before there are data; and the protocol as a document to be signed before the first collection.</summary>
internal static class PlanCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = StudyArgument.Json("Write the plan as JSON.");
        var document = new Option<string?>("--document")
        {
            Description =
                "Write the protocol as a PDF, such as protocol.pdf, that author and approver sign before the first collection; made from protocol.toml alone.",
            HelpName = "FILE",
        };
        var reason = new Option<string?>("--reason")
        {
            Description =
                "With --document, why a locked protocol is amended: the document then begins with what changed against the locked one.",
            HelpName = "TEXT",
        };
        var paper = PaperOption.Create();
        var options = new PlanOptions();
        var command = new Command(
            "plan",
            "Show before there are data how many specimens, tubes and days a study takes, and its chance of \"supported\": if nothing changes, if half of the published change is true, and if all of it is. With --document the protocol as a PDF to be signed.\n\nExample:\n  stability-study plan my-study\n  stability-study plan my-study --document my-study/out/protocol.pdf\n  stability-study sign my-study/out/protocol.pdf --role author --key me.p12\n\nWhen everybody in it has signed, give it to lock with --signed-protocol."
        )
        {
            study,
            document,
            reason,
            paper,
            json,
        };
        foreach (var option in options.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var folder = parsed.GetRequiredValue(study);
            var why = TextOption.OneLine(parsed.GetValue(reason), reason.Name);
            if (parsed.GetValue(document) is not { } target)
            {
                if (why is not null)
                {
                    throw new UsageException(
                        $"{reason.Name} belongs to the document of an amendment: give {document.Name} too."
                    );
                }

                return (int)Plan(terminal, folder, parsed, options, parsed.GetValue(json));
            }

            if ((parsed.GetValue(json) ? json.Name : options.FirstGiven(parsed)) is { } beside)
            {
                throw new UsageException(
                    $"{beside} has no effect on the document, which is made from protocol.toml alone. Put days, expected changes and SDs there (planned_days, expected_changes)."
                );
            }

            return (int)Draw(terminal, folder, target, PaperOption.Of(parsed, paper), why);
        });
        return command;
    }

    private static ExitCode Plan(
        Terminal terminal,
        string folder,
        ParseResult parsed,
        PlanOptions options,
        bool json
    )
    {
        var request = options.Request(parsed) with { ByCriterion = json };
        var figure = options.Figure(parsed);
        var files = StudyFolder.Read(folder);
        RequireKnown(folder, files, request);
        terminal.Progress("simulating studies");
        var outcome = StudyPipeline.Plan(
            files,
            request,
            options.Pilot(parsed) is { } pilot
                ? (
                    InputFile.ReadFilled(pilot, StudyLimits.TableBytes, "pilot"),
                    Path.GetFileName(pilot)
                )
                : null
        );
        if (!outcome.TryGet(out var plan))
        {
            return StoppedStudy.Report(terminal, outcome.Queries, json);
        }

        if (figure is not null)
        {
            AtomicFile.Write([.. Figures(plan, figure)]);
        }

        if (json)
        {
            terminal.WriteJson(PlanDocument.Write(plan, PlanText.Paragraph(plan)));
            return ExitCode.Done;
        }

        if (options.OnlyParagraph(parsed))
        {
            terminal.Out.WriteLine(PlanText.Paragraph(plan));
            return ExitCode.Done;
        }

        terminal.Out.Write(PlanText.Draw(plan, terminal.Width));
        if (!outcome.Queries.IsEmpty)
        {
            terminal.Error.WriteLine(
                $"protocol.toml: {QueryListing.Total(outcome.Queries)}; to see them:"
            );
            terminal.Error.WriteLine($"stability-study check {folder}");
        }

        NextCommand.Say(
            terminal,
            "plan",
            folder,
            "--document",
            Path.Combine(folder, "out", "protocol.pdf")
        );
        return ExitCode.Done;
    }

    private static void RequireKnown(
        string folder,
        Files.Intake.StudyBytes files,
        PlanRequest request
    )
    {
        if (
            request is { Analyte: null, Group: null }
            || !StudyPipeline.ProtocolOf(files).TryGet(out var protocol)
        )
        {
            return;
        }

        Require("--analyte", request.Analyte, [.. protocol.Analytes.Select(item => item.Id)]);
        Require("--group", request.Group, [.. protocol.Groups.Select(item => item.Id)]);
        if (
            protocol.Analytes.Any(item =>
                item.Id == (request.Analyte ?? item.Id)
                && (
                    request.Group is null
                    || item.Groups.IsEmpty
                    || item.Groups.Contains(request.Group)
                )
            )
        )
        {
            return;
        }

        throw new UsageException(
            $"{request.Analyte} is not studied in group {request.Group} of {folder}."
        );

        static void Require(string option, string? asked, string[] known)
        {
            if (asked is not null && !known.Contains(asked, StringComparer.Ordinal))
            {
                throw new UsageException(
                    $"{option} {asked} is not in the protocol. Write one of {string.Join(", ", known)}."
                );
            }
        }
    }

    private static IEnumerable<(string Path, ReadOnlyMemory<byte> Bytes)> Figures(
        StudyPlan plan,
        string target
    )
    {
        var figures = PlanText.Figures(plan);
        var stem = Path.Combine(
            Path.GetDirectoryName(target) ?? "",
            Path.GetFileNameWithoutExtension(target)
        );
        return figures switch
        {
            [] => throw new UsageException(
                "No time of this protocol could be simulated, so that there is no figure; nothing was written."
            ),
            [var only] => [(target, only.Svg)],
            _ => figures.Select(item => ($"{stem}-{item.Name}", item.Svg)),
        };
    }

    private static ExitCode Draw(
        Terminal terminal,
        string folder,
        string target,
        PaperSize paper,
        string? reason
    )
    {
        if (!string.Equals(Path.GetExtension(target), ".pdf", StringComparison.OrdinalIgnoreCase))
        {
            throw new UsageException(
                $"The protocol document is a PDF. Name it like {Path.ChangeExtension(target, ".pdf")}."
            );
        }

        _ = ReportTarget.AnalysisBeside(folder, target, target);
        terminal.Progress("simulating studies");
        switch (
            StudyPipeline.RenderProtocol(
                StudyFolder.Read(folder),
                paper,
                reason,
                DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime)
            )
        )
        {
            case ProtocolDrawing.Stopped stopped:
                return StoppedStudy.Report(terminal, stopped.Queries, json: false);
            case ProtocolDrawing.Refused refused:
                throw new UsageException("No document. " + refused.Why);
            case ProtocolDrawing.Drawn drawn:
                if (!drawn.Queries.IsEmpty)
                {
                    QueryListing.Write(terminal, drawn.Queries);
                    terminal.Out.WriteLine();
                }

                AtomicFile.Write((target, drawn.Document.Pdf));
                terminal.Out.WriteLine(target);
                if (drawn.Amendment is { } amendment)
                {
                    terminal.Out.WriteLine(
                        FormattableString.Invariant(
                            $"Amendment {amendment.Number} of the protocol of lock {amendment.EarlierLockNumber}: {Counted.Of(amendment.Changes.Length, "change")}."
                        )
                    );
                }

                return ExitCode.Done;
            default:
                throw new InvalidOperationException("A drawing of another kind.");
        }
    }
}
