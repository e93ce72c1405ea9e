using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Cli.Commands;

/// <summary>inspection: one folder with all that an inspector asks for, made from the signed reports.</summary>
internal static class InspectionCommand
{
    private const int UsualYears = 2;

    public static Command Create(Terminal terminal)
    {
        var folder = RegisterArgument.Create("verified and copied");
        var output = new Option<string>("--output", "-o")
        {
            Description = "The folder to be made; one that is there must be empty.",
            HelpName = "FOLDER",
            Required = true,
        };
        var asOf = new Option<string?>("--as-of")
        {
            Description =
                "The day as of which the register is shown, YYYY-MM-DD; today when not given.",
            HelpName = "DAY",
        };
        var years = new Option<int>("--keep-years")
        {
            Description =
                "Years for which records are kept after their last use; local rules may ask for more.",
            DefaultValueFactory = _ => UsualYears,
            HelpName = "NUMBER",
        };
        var spinTakes = new Option<string?>("--spin-takes")
        {
            Description =
                "Time from the spin to the test at your bench, as in procedures; what the protocols say when not given.",
            HelpName = "TIME",
        };
        var trust = new TrustOptions();
        var paper = PaperOption.Create();
        var command = new Command(
            "inspection",
            "Write one folder for an inspection: the signed reports and notices, what verify finds in each, the register as of a day, the documents of the bench in force, and an index that names the pages on which clauses of law and standard are answered, the files to keep and until when, and every file with its SHA-256. verify checks the folder.\n\nExample:\n  stability-study inspection register -o inspection-2026-05 --trust keys"
        )
        {
            folder,
            output,
            asOf,
            years,
            spinTakes,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            paper,
        };
        command.SetAction(parsed =>
        {
            var target = parsed.GetRequiredValue(output);
            NewFolder.RequireFree(target);
            if (parsed.GetValue(years) is < 1 or > InspectionToml.MostYears)
            {
                throw new UsageException(
                    $"{years.Name} is a whole number from 1 to {InspectionToml.MostYears.ToString(CultureInfo.InvariantCulture)}."
                );
            }

            // To the second, as it is written down: what follows from it is made again by it.
            var now = terminal.Clock.GetLocalNow();
            now = now.AddTicks(-(now.Ticks % TimeSpan.TicksPerSecond));
            var options = trust.Of(parsed).Read(now);
            var terms = InspectionPack.Terms(
                DayText.OrToday(parsed.GetValue(asOf), asOf.Name, now),
                options,
                parsed.GetValue(years)
            ) with
            {
                IsOnLetter = PaperOption.Of(parsed, paper) == PaperSize.Letter,
                SpinTakes = WaitedOption.Read(parsed.GetValue(spinTakes), spinTakes.Name),
            };
            var sources = RegisterFolder.Files(parsed.GetRequiredValue(folder));
            if (
                sources
                    .Pdfs.Concat(sources.Locks)
                    .FirstOrDefault(file => !InspectionFiles.CanBeListed(file.Name)) is
                { } odd
            )
            {
                throw new UsageException(
                    $"The name {odd.Name} cannot stand in a list of files. Give the file another; nothing was written."
                );
            }

            var pack = InspectionPack.Of(sources, terms, options, terminal.Progress);
            NewFolder.Write(target, [.. pack.Files.Select(file => (file.Name, file.Bytes))]);
            return (int)Tell(
                terminal,
                target,
                pack,
                new RegisterAttention(pack.Register, terms.AsOf)
            );
        });
        return command;
    }

    private static ExitCode Tell(
        Terminal terminal,
        string folder,
        InspectionPack pack,
        RegisterAttention attention
    )
    {
        var index = pack.Files.Single(file => file.Name == InspectionFiles.Index);
        WrappedText.Write(
            terminal,
            $"{folder}: {AnswerWords.Count(pack.Verified.Length, "signed file")}, {AnswerWords.Count(pack.Files.Length, "file")} in all. Begin with {InspectionFiles.Index}."
        );
        WrappedText.Write(
            terminal,
            $"Note the SHA-256 of {InspectionFiles.Index} elsewhere; it stands for the whole folder:"
        );
        terminal.Out.WriteLine(InputDigest.Sha256(index.Bytes.Span));
        foreach (var note in attention.Faults)
        {
            WrappedText.Write(terminal, "! " + note, "  ");
        }

        NextCommand.Say(terminal, "verify", folder, "--trust", "CERTIFICATES");
        return attention.Faults.IsEmpty ? ExitCode.Done : ExitCode.VerificationIncomplete;
    }
}
