using System.CommandLine;
using System.Text;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Cli.Commands;

/// <summary>report: writes the report and analysis.json.</summary>
internal static class ReportCommand
{
    private const string Pdf = "pdf";
    private const string Text = "text";
    private const string Html = "html";

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Where to write the report; out/report.pdf in the study folder otherwise.",
            HelpName = "FILE",
        };
        var format = new Option<string>("--format")
        {
            Description =
                "pdf, html (one page to read, with everything inside) or text (what is read at once).",
            DefaultValueFactory = _ => Pdf,
            HelpName = "FORMAT",
        }.AcceptOnlyFromAmong(Pdf, Html, Text);
        var figures = new Option<string?>("--figures")
        {
            Description = "Also write every figure as an SVG file into this folder.",
            HelpName = "FOLDER",
        };
        var paper = PaperOption.Create();
        var full = new Option<bool>("--full")
        {
            Description =
                "Show everything: in the PDF also the estimates that neither decide nor describe what decides, in text also what is looked up. The HTML always does.",
        };
        var interim = Looking.Interim();
        var require = StudyArgument.RequireSupported();
        var command = new Command(
            "report",
            "Write the report and, beside it, analysis.json with every figure (NAME.analysis.json with --output).\n\nExample:\n  stability-study report my-study -o report.pdf"
        )
        {
            study,
            output,
            format,
            figures,
            paper,
            full,
            interim,
            require,
        };
        command.SetAction(
            // On a thread of its own: only then is Ctrl+C listened to while the command works.
            (parsed, cancellation) =>
                Task.Run(
                    () =>
                        (int)Run(
                            terminal,
                            new Request(
                                parsed.GetRequiredValue(study),
                                parsed.GetValue(output),
                                parsed.GetResult(format) is { Implicit: false }
                                    ? parsed.GetValue(format)
                                    : null,
                                parsed.GetValue(figures),
                                PaperOption.Of(parsed, paper),
                                parsed.GetValue(full),
                                parsed.GetValue(interim),
                                parsed.GetValue(require)
                            ),
                            cancellation
                        ),
                    cancellation
                )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, Request request, CancellationToken cancellation)
    {
        var target =
            request.Output
            ?? Path.Combine(
                request.Folder,
                "out",
                "report." + (request.Format == Text ? "txt" : request.Format ?? Pdf)
            );
        var analysis = ReportTarget.AnalysisBeside(request.Folder, request.Output, target);
        var format = FormatOf(request.Output, request.Format);
        terminal.Progress("Reading and analyzing " + request.Folder);
        var files = StudyFolder.Read(request.Folder);
        var outcome = StudyPipeline.Analyze(files);
        if (!outcome.TryGet(out var analyzed))
        {
            return StoppedStudy.Report(terminal, outcome.Queries, json: false);
        }

        if (!Looking.MayShow(terminal, analyzed, request.Interim, json: false))
        {
            terminal.Error.WriteLine("No report was written.");
            return SupportedRequirement.Check(analyzed, request.RequireSupported);
        }

        cancellation.ThrowIfCancellationRequested();
        terminal.Progress("Drawing the report");
        var bytes = Draw(analyzed, format, request);
        var figures = request.Figures is null
            ? []
            : StudyPipeline
                .RenderFigures(analyzed)
                .Select(figure => (Path.Combine(request.Figures, figure.Name), figure.Svg));
        var json = StudyPipeline.WriteAnalysis(analyzed);
        // Files that stand there are never told as cancelled, nor the other way round.
        terminal.HoldInterrupts();
        cancellation.ThrowIfCancellationRequested();
        RecordFile.Write(
            request.Folder,
            Looking.With(
                new RecordEntry(
                    RecordAction.Report,
                    terminal.Clock.GetLocalNow(),
                    terminal.User,
                    ToolVersion.Named,
                    analyzed.Analysis.Identity.Inputs,
                    [
                        new FileHash(Path.GetFileName(analysis), InputDigest.Sha256(json.Span)),
                        new FileHash(Path.GetFileName(target), InputDigest.Sha256(bytes.Span)),
                    ]
                ),
                files.Files.GetValueOrDefault(StudyRecord.Name),
                analyzed.Analysis
            ),
            [(analysis, json), (target, bytes), .. figures]
        );
        SayIfFuture(terminal, analyzed);
        terminal.Out.Write(StudyPipeline.Headline(analyzed, terminal.Width) + '\n');
        terminal.Out.WriteLine(target);
        return SupportedRequirement.Check(analyzed, request.RequireSupported);
    }

    /// <summary>A report depends on no clock; that its results have not been measured yet is for the one who makes it to know.</summary>
    private static void SayIfFuture(Terminal terminal, AnalyzedStudy analyzed)
    {
        if (StudyPipeline.LastResult(analyzed) is { } last && last > terminal.Clock.GetLocalNow())
        {
            terminal.Error.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The last result is of {last:yyyy-MM-dd HH:mm zzz}, which is after the time of this computer's clock. Correct the times in the files, or the clock: the report cannot be signed before."
                )
            );
        }
    }

    /// <summary>The format asked for, or that of the ending; never one under the name of another.</summary>
    private static string FormatOf(string? output, string? asked)
    {
        var ending = Path.GetExtension(output ?? "").ToLowerInvariant();
        var ofEnding = ending switch
        {
            "" => asked ?? Pdf,
            ".pdf" => Pdf,
            ".html" or ".htm" => Html,
            ".txt" => Text,
            _ => null,
        };
        return ofEnding is null
                ? throw new UsageException(
                    $"{output} ends in {ending}, and a report is a .pdf, .html or .txt file. Name it like report.pdf."
                )
            : asked is not null && asked != ofEnding
                ? throw new UsageException(
                    $"{output} ends in {ending}, and --format asks for {asked}. Leave --format away, or give the file another ending."
                )
            : ofEnding;
    }

    private static ReadOnlyMemory<byte> Draw(
        AnalyzedStudy analyzed,
        string format,
        Request request
    ) =>
        format switch
        {
            Text => Encoding.UTF8.GetBytes(
                StudyPipeline.RenderText(analyzed, Terminal.DefaultWidth, request.Full)
            ),
            Html => Encoding.UTF8.GetBytes(StudyPipeline.RenderHtml(analyzed)),
            _ => StudyPipeline.Render(analyzed, request.Paper, request.Full).Pdf,
        };

    private sealed record Request(
        string Folder,
        string? Output,
        string? Format,
        string? Figures,
        PaperSize Paper,
        bool Full,
        bool Interim,
        bool RequireSupported
    );
}
