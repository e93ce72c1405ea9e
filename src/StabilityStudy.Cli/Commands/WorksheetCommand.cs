using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Commands;

/// <summary>worksheet: the pages for the bench.</summary>
internal static class WorksheetCommand
{
    private const int MostSeeds = 1_000_000_000;
    private const int MostDays = 1000;

    private static readonly (string Word, BenchPageKind Kind)[] s_kinds =
    [
        ("draw", BenchPageKind.Draw),
        ("frozen", BenchPageKind.Frozen),
        ("temperature", BenchPageKind.Temperature),
        ("labels", BenchPageKind.Labels),
        ("run-list", BenchPageKind.RunList),
    ];

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Where to write the PDF; out/worksheet-day-1.pdf in the study folder otherwise, or out/run-list.pdf.",
            HelpName = "FILE",
        };
        var page = new Option<string[]>("--page")
        {
            Description =
                "draw, frozen, temperature, labels, or run-list; may be given several times. Otherwise all that is printed before the draw.",
            HelpName = "KIND",
        }.AcceptOnlyFromAmong([.. s_kinds.Select(kind => kind.Word)]);
        var day = new Option<int>("--day")
        {
            Description = "Day of collection: which specimens of the planned ones are drawn.",
            DefaultValueFactory = _ => 1,
            HelpName = "NUMBER",
        };
        var specimens = new Option<string[]>("--specimens")
        {
            Description =
                "The specimens of a group instead, such as none=N-001..N-004; once for each group.",
            HelpName = "GROUP=CODES",
        };
        var date = new Option<string?>("--date")
        {
            Description =
                "For run-list: the day on which the specimens were collected, such as 2026-03-02; the last one when not given.",
            HelpName = "DATE",
        };
        var withoutSpare = new Option<bool>("--without-spare")
        {
            Description = "No spare tube is drawn.",
        };
        var seed = new Option<int?>("--seed")
        {
            Description =
                "Seed of the random run order, printed on each page and kept in the study's record; one from the protocol when not given, the same on every day.",
            HelpName = "NUMBER",
        };
        var paper = PaperOption.Create();
        var labels = new LabelOptions();
        var command = new Command(
            "worksheet",
            "Print the pages for the bench. Before the draw: a sheet with the times of each tube counted from collection, temperatures, labels, and for frozen plasma freezing and thawing. The same day, when the collection times stand in specimens.csv: the delayed tubes by the clock.\n\nExample:\n  stability-study worksheet my-study --day 1\n  stability-study worksheet my-study --page run-list"
        )
        {
            study,
            output,
            page,
            day,
            specimens,
            date,
            withoutSpare,
            seed,
            paper,
        };
        labels.AddTo(command);
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(study),
                parsed.GetValue(output),
                new BenchRequest(
                    [
                        .. (parsed.GetValue(page) ?? []).Select(word =>
                            s_kinds.Single(kind => kind.Word == word).Kind
                        ),
                    ],
                    Within(parsed.GetValue(day), 1, MostDays, "--day"),
                    PaperOption.Of(parsed, paper)
                )
                {
                    Date = DateOf(parsed.GetValue(date)),
                    WithoutSpare = parsed.GetValue(withoutSpare),
                    Seed = parsed.GetValue(seed) is { } given
                        ? Within(given, 0, MostSeeds, "--seed")
                        : null,
                    Specimens = [.. parsed.GetValue(specimens) ?? []],
                    Labels = labels.Of(parsed, PaperOption.Of(parsed, paper)),
                }
            )
        );
        return command;
    }

    private static ExitCode Run(
        Terminal terminal,
        string folder,
        string? output,
        BenchRequest request
    )
    {
        var target = output ?? Path.Combine(folder, "out", UsualName(request));
        if (!string.Equals(Path.GetExtension(target), ".pdf", StringComparison.OrdinalIgnoreCase))
        {
            throw new UsageException(
                $"The pages are a PDF. Name it like {Path.ChangeExtension(target, ".pdf")}."
            );
        }

        _ = ReportTarget.AnalysisBeside(folder, output, target);
        var files = StudyFolder.Read(folder);
        var answer = BenchPages.Of(files, request);
        switch (answer)
        {
            case BenchPagesAnswer.Stopped stopped:
                return StoppedStudy.Report(terminal, stopped.Queries, json: false);
            case BenchPagesAnswer.NotFitting not:
                throw new UsageException($"No page: {not.Why}.");
            case BenchPagesAnswer.Ready ready:
                var rendered = BenchPages.Render(ready);
                RecordFile.Write(
                    ready.HasRunOrder ? folder : null,
                    new RecordEntry(
                        RecordAction.Worksheet,
                        terminal.Clock.GetLocalNow(),
                        terminal.User,
                        ToolVersion.Named,
                        [new FileHash(StudyBytes.ProtocolName, ready.Study.ProtocolSha256)],
                        [
                            new FileHash(
                                Path.GetFileName(target),
                                InputDigest.Sha256(rendered.Pdf.Span)
                            ),
                        ]
                    )
                    {
                        Seed = ready.Study.Seed,
                    },
                    (target, rendered.Pdf)
                );
                if (!ready.AlreadyThere.IsEmpty)
                {
                    terminal.Error.WriteLine(
                        $"Already in the study's files: {string.Join(", ", ready.AlreadyThere)}. For further specimens give --day or --specimens."
                    );
                }

                if (ready.Unread > 0)
                {
                    terminal.Error.WriteLine(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{ready.Unread} {(ready.Unread == 1 ? "row" : "rows")} of tubes could not be read, and the tubes are missing on the list or stand there without a time: run check, correct them and print again."
                        )
                    );
                }

                terminal.Out.WriteLine(target);
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("An answer of another kind.");
        }
    }

    private static string UsualName(BenchRequest request) =>
        request.Kinds is [BenchPageKind.RunList]
            ? request.Date is { } date
                ? string.Create(CultureInfo.InvariantCulture, $"run-list-{date:yyyy-MM-dd}.pdf")
                : "run-list.pdf"
            : string.Create(CultureInfo.InvariantCulture, $"worksheet-day-{request.Day}.pdf");

    private static int Within(int number, int least, int most, string option) =>
        number >= least && number <= most
            ? number
            : throw new UsageException($"{option}: a number from {least} to {most}.");

    private static DateOnly? DateOf(string? text) =>
        text is null
            ? null
            : DayText.Read(text)
                ?? throw new UsageException(
                    $"--date: \"{text}\" is no date. Write it like 2026-03-02."
                );
}
