using System.CommandLine;
using System.CommandLine.Completions;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Cli.Protocols;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Starting;

namespace StabilityStudy.Cli.Commands;

/// <summary>start: makes a study folder that is ready for use.</summary>
internal static class StartCommand
{
    private const string Reduced = "reduced";
    private const string Full = "full";

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER")
        {
            Description = "The folder to be made; one that is there must be empty.",
        };
        var protocol = Text(
            "--protocol",
            "NAME",
            "The ready protocol to begin with; protocols lists them."
        );
        protocol.CompletionSources.Add(_ =>
            ReadyProtocol.Names.Select(item => new CompletionItem(item))
        );
        var repeat = Text(
            "--repeat",
            "REPORT",
            "The signed report of a study to be repeated, in place of --protocol."
        );
        var tier = new Option<string>("--tier")
        {
            Description =
                "With --repeat: reduced, the longest approved times alone, for a new lot of the same reagent; full, the whole study, for a new reagent, principle, tube type, instrument or transport.",
            DefaultValueFactory = _ => Reduced,
            HelpName = "TIER",
        }.AcceptOnlyFromAmong(Reduced, Full);
        var reason = Text("--reason", "TEXT", "With --repeat: what changed, such as the new lot.");
        var register = Text(
            "--register",
            "FOLDER",
            "With --repeat: the folder of the signed reports, which says whether the windows are still in force; the report's own folder, without those inside it, when not given."
        );
        var trust = new TrustOptions();
        var code = Text(
            "--code",
            "CODE",
            "Study code; the folder's name in capitals when not given."
        );
        var title = Text(
            "--title",
            "TEXT",
            "Title of the study; the protocol's question when not given."
        );
        var question = Text(
            "--question",
            "TEXT",
            "What is asked; the protocol's question when not given."
        );
        var facility = Text("--facility", "TEXT", "The laboratory, as the report names it.");
        var zone = Text(
            "--time-zone",
            "ZONE",
            $"IANA zone of the times in your files; {StartAnswers.NoZone} when each has its offset."
        );
        var people = Texts(
            "--person",
            "CODE=NAME, ROLE",
            "Who works on the study; may be given more than once."
        );
        var instruments = Texts(
            "--instrument",
            "CODE=NAME",
            "With what it is tested; may be given more than once."
        );
        var lots = Texts(
            "--lot",
            "CODE=KIND, ANALYTE, DATE",
            "A reagent lot and its last day, which may be left out; may be given more than once."
        );
        var invented = new Option<bool>("--invented")
        {
            Description = "The data will be invented, and every page says so.",
        };
        var command = new Command(
            "start",
            "Make a study folder from a ready protocol: the protocol to adapt, study.toml with every key explained, empty data files with their headers. At a terminal it asks what no option says; otherwise --protocol, --facility, --time-zone and --person are needed. With --repeat from a signed report: people, laboratory and instruments are then the original's.\n\nExample:\n  stability-study start aptt-2026 --protocol aptt-whole-blood-room-temperature\n  stability-study start aptt-lot-2 --repeat aptt.pdf --trust keys --reason \"new lot R-2602\""
        )
        {
            folder,
            protocol,
            repeat,
            tier,
            reason,
            register,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            code,
            title,
            question,
            facility,
            zone,
            people,
            instruments,
            lots,
            invented,
        };
        command.SetAction(parsed =>
        {
            var options = new StartOptions(
                parsed.GetRequiredValue(folder),
                parsed.GetValue(protocol),
                parsed.GetValue(code),
                parsed.GetValue(title),
                parsed.GetValue(question),
                parsed.GetValue(facility),
                parsed.GetValue(zone),
                [.. parsed.GetValue(people) ?? []],
                [.. parsed.GetValue(instruments) ?? []],
                [.. parsed.GetValue(lots) ?? []],
                parsed.GetValue(invented)
            );
            if (parsed.GetValue(repeat) is not { } report)
            {
                Option<string?>[] ofRepeat = [reason, register];
                return
                    ofRepeat.FirstOrDefault(option => parsed.GetValue(option) is not null)
                        is { } alone
                    ? throw new UsageException($"{alone.Name} goes with {repeat.Name}.")
                    : (int)Run(terminal, options);
            }

            if (options.Protocol is not null)
            {
                throw new UsageException(
                    $"{repeat.Name} takes the protocol of the report: leave {protocol.Name} away."
                );
            }

            return (int)
                StartRepeat.Run(
                    terminal,
                    options,
                    report,
                    trust.Of(parsed),
                    parsed.GetValue(register),
                    parsed.GetValue(tier) == Full ? RepeatTier.Full : RepeatTier.Reduced,
                    TextOption.OneLine(parsed.GetValue(reason), reason.Name)
                );
        });
        return command;
    }

    private static ExitCode Run(Terminal terminal, StartOptions options)
    {
        NewFolder.RequireFree(options.Folder);
        var (ready, code, study) = StartAnswers.Of(
            options,
            new Questions(terminal),
            terminal.Clock
        );
        Tell(terminal, options.Folder, Write(options.Folder, ready.Text, code, study), study);
        return ExitCode.Done;
    }

    /// <summary>Writes the folder.</summary>
    internal static StartedStudy Write(string folder, string protocol, string code, NewStudy study)
    {
        var outcome = StartedStudy.Of(protocol, code, study);
        if (!outcome.TryGet(out var started))
        {
            throw new UsageException(
                outcome.Queries.First(query => query.Severity == Severity.Stop) is var first
                    ? $"{first.Message} {first.Action} Nothing was written."
                    : ""
            );
        }

        NewFolder.Write(folder, started.Files);
        return started;
    }

    internal static void Tell(
        Terminal terminal,
        string folder,
        StartedStudy started,
        NewStudy study
    )
    {
        var output = terminal.Out;
        output.WriteLine($"Study folder {folder} is ready. Nothing is locked yet.");
        output.WriteLine();
        var column = started.Files.Max(file => file.Name.Length);
        foreach (var (name, _) in started.Files)
        {
            output.WriteLine($"  {name.PadRight(column)}    {Holds(name, started.Protocol)}");
        }

        output.WriteLine();
        var sources = NamedSource.All(started.Protocol).Count(source => source.IsFromMemory);
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Count(started.Changes, "place")} in {StudyBytes.ProtocolName} {(started.Changes == 1 ? "is" : "are")} marked CHANGE; {Count(sources, "source")} {(sources == 1 ? "is" : "are")} from memory."
            )
        );
        if (study.Instruments.IsEmpty || study.Lots.IsEmpty)
        {
            output.WriteLine(
                $"Still to be named in {StudyBytes.FactsName}: {(study.Instruments.IsEmpty ? "instrument, " : "")}{(study.Lots.IsEmpty ? "lot, " : "")}and whose clock each time is."
            );
        }

        NextCommand.Say(terminal, "plan", folder);
    }

    private static string Holds(string file, StudyProtocol protocol) =>
        file switch
        {
            StudyBytes.ProtocolName => "what is fixed before data: " + Planned(protocol),
            StudyBytes.FactsName => "people, instruments, lots, clocks: every key explained",
            _ => "empty, with its headers",
        };

    private static string Planned(StudyProtocol protocol) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Count(protocol.Groups.Length, "group")}, {Count(protocol.Groups.Sum(group => group.Specimens), "specimen")}, up to {protocol.TimePoints[^1]}"
        );

    private static string Count(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");

    private static Option<string?> Text(string name, string value, string description) =>
        new(name) { Description = description, HelpName = value };

    private static Option<string[]?> Texts(string name, string value, string description) =>
        new(name) { Description = description, HelpName = value };
}
