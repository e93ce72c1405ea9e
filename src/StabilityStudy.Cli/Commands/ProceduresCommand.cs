using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Cli.Commands;

/// <summary>procedures: the documents by which a bench works, from the signed reports of a folder.</summary>
internal static class ProceduresCommand
{
    private static readonly ImmutableArray<ApprovedDocumentKind> s_kinds =
    [
        .. Enum.GetValues<ApprovedDocumentKind>(),
    ];

    public static Command Create(Terminal terminal)
    {
        var folder = RegisterArgument.Create("verified");
        var output = new Option<string>("--output", "-o")
        {
            Description = "The folder for the documents.",
            HelpName = "FOLDER",
            Required = true,
        };
        var document = new Option<string[]>("--document")
        {
            Description =
                "card, rules, procedure, clients or training; may be given several times. Otherwise all.",
            HelpName = "KIND",
        }.AcceptOnlyFromAmong([.. s_kinds.Select(BenchDocuments.WordOf)]);
        var asOf = Text(
            "--as-of",
            "The day as of which they hold, YYYY-MM-DD; today when not given.",
            "DAY"
        );
        var analyte = Text("--analyte", "Code of the analyte; all when not given.", "CODE");
        var storage = Text("--storage", "Code of the storage; all when not given.", "CODE");
        var spinTakes = Text(
            "--spin-takes",
            "Time from the spin to the test at your bench, for \"spin by\"; when not given the protocol's spin_takes, else 30 min.",
            "TIME"
        );
        var trust = new TrustOptions();
        var paper = PaperOption.Create();
        var command = new Command(
            "procedures",
            "Write the documents by which the bench works, from the windows that signed reports put into force: the bench card, the rule table for the laboratory information system with its boundary cases (also as CSV), text for the procedure manual, wording for clients, and a sign-off sheet for training. Where the register does not answer clearly there is none, and the reason is given: exit code 5.\n\nExample:\n  stability-study procedures register -o bench --trust keys"
        )
        {
            folder,
            output,
            document,
            asOf,
            analyte,
            storage,
            spinTakes,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            paper,
        };
        command.SetAction(parsed =>
        {
            var day = DayText.OrToday(
                parsed.GetValue(asOf),
                asOf.Name,
                terminal.Clock.GetLocalNow()
            );
            var takes = WaitedOption.Read(parsed.GetValue(spinTakes), spinTakes.Name);
            var register = RegisterFolder.Read(
                parsed.GetRequiredValue(folder),
                trust.Of(parsed).Read(terminal.Clock.GetUtcNow()),
                terminal,
                null,
                _ => true
            );
            var rules = BenchDocuments.RulesOf(
                register,
                day,
                TextOption.OneLine(parsed.GetValue(analyte), analyte.Name),
                TextOption.OneLine(parsed.GetValue(storage), storage.Name),
                takes
            );
            if (
                takes is { } given
                && rules.FirstOrDefault(item =>
                    given < TimeSpan.FromMinutes(1)
                    || given > BenchDocuments.LongestSpinToTest(item)
                )
                    is { } other
            )
            {
                throw new UsageException(
                    $"{spinTakes.Name}: {other.Analyte} in {other.Storage} is tested at most {AnswerWords.Time(BenchDocuments.LongestSpinToTest(other))} after the spin. Give a shorter time, of a minute or more."
                );
            }

            return (int)Write(
                terminal,
                register,
                rules,
                parsed.GetRequiredValue(output),
                [
                    .. s_kinds.Where(kind =>
                        parsed.GetValue(document) is not { Length: > 0 } words
                        || words.Contains(BenchDocuments.WordOf(kind))
                    ),
                ],
                PaperOption.Of(parsed, paper)
            );
        });
        return command;
    }

    private static ExitCode Write(
        Terminal terminal,
        WindowRegister register,
        ImmutableArray<BenchRules> rules,
        string folder,
        ImmutableArray<ApprovedDocumentKind> kinds,
        PaperSize paper
    )
    {
        foreach (var item in rules.Where(item => !item.Obstacles.IsEmpty))
        {
            terminal.Error.WriteLine(
                $"No document for {item.Analyte} in {item.Storage}: {AnswerWords.Sentence(item.Obstacles[0])}"
            );
            terminal.Error.WriteLine(
                $"Take down what is posted for {item.Analyte} in {item.Storage}."
            );
        }

        if (rules.IsEmpty)
        {
            foreach (var report in register.Reports.Where(report => !report.Counts))
            {
                terminal.Error.WriteLine($"{report.File}: not counted. {report.Why}");
            }

            terminal.Error.WriteLine("No document: no report that counts has a rule for it.");
        }

        var ready = rules.Where(item => item.Obstacles.IsEmpty).ToImmutableArray();
        foreach (var item in ready)
        {
            terminal.Progress($"Drawing {item.Analyte} in {item.Storage}");
            (string Path, ReadOnlyMemory<byte> Bytes)[] files =
            [
                .. BenchDocuments
                    .Files(item, ready, kinds, paper)
                    .Select(file => (Path.Combine(folder, file.Name), file.Bytes)),
            ];
            if (
                item.Rows.Any(row =>
                    row.Standing is WindowStanding.Withdrawn or WindowStanding.EndedByNewDirector
                )
            )
            {
                terminal.Error.WriteLine(
                    $"A window for {item.Analyte} in {item.Storage} was withdrawn or ended: take down what was posted before."
                );
            }

            AtomicFile.Write(files);
            foreach (var (path, _) in files)
            {
                terminal.Out.WriteLine(path);
            }
        }

        return rules.IsEmpty || ready.Length < rules.Length
            ? ExitCode.VerificationIncomplete
            : ExitCode.Done;
    }

    private static Option<string?> Text(string name, string description, string help) =>
        new(name) { Description = description, HelpName = help };
}
