using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Help;
using StabilityStudy.Cli.Commands;
using StabilityStudy.Cli.Console;

namespace StabilityStudy.Cli.Help;

/// <summary>All commands of the program; help, manual pages and completions are written from this tree.</summary>
internal sealed record CommandTree(RootCommand Root, ImmutableArray<CommandGroup> Groups)
{
    /// <summary>How the program is called.</summary>
    public const string Program = "stability-study";

    /// <summary>The tree for a terminal.</summary>
    public static CommandTree Create(Terminal terminal)
    {
        CommandTree? tree = null;
        ImmutableArray<CommandGroup> groups =
        [
            new(
                "Plan a study",
                [
                    ProtocolsCommand.Create(terminal),
                    StartCommand.Create(terminal),
                    PlanCommand.Create(terminal),
                    LockCommand.Create(terminal),
                ],
                Shown: 1
            ),
            new(
                "Collect",
                [
                    WorksheetCommand.Create(terminal),
                    CheckCommand.Create(terminal),
                    TranscriptionCommand.Create(terminal),
                ],
                Shown: 1
            ),
            new(
                "Conclude",
                [
                    AnalyzeCommand.Create(terminal),
                    ReportCommand.Create(terminal),
                    EndCommand.Create(terminal),
                ],
                Shown: 1
            ),
            new(
                "Sign and verify",
                [
                    SignCommand.Create(terminal),
                    VerifyCommand.Create(terminal),
                    RenewCommand.Create(terminal),
                    TrialCertificateCommand.Create(terminal),
                ]
            ),
            new(
                "Apply at the bench",
                [
                    SupportedWindowsCommand.Create(terminal),
                    ProceduresCommand.Create(terminal),
                    InspectionCommand.Create(terminal),
                    KeepCommand.Create(terminal),
                    WithdrawCommand.Create(terminal),
                ]
            ),
            new(
                "This program",
                [
                    ProveCommand.Create(terminal),
                    ManualCommand.Create(terminal, () => tree!),
                    CompletionsCommand.Create(terminal),
                ]
            ),
        ];
        var root = new RootCommand(
            "From paired baseline and delayed results to the evidence for a longer processing window of coagulation specimens.\n\nExample:\n  stability-study report example-studies/aptt-room-temperature"
        );
        foreach (var command in groups.SelectMany(group => group.Commands))
        {
            root.Add(command);
        }

        tree = new CommandTree(root, groups);
        root.Options.Remove(root.Options.OfType<HelpOption>().Single());
        root.Add(new HelpOption("--help", "-h", "-?") { Action = new ShowHelp(terminal, tree) });
        root.Options.OfType<VersionOption>().Single().Action = new ShowVersion(terminal);
        root.Directives.OfType<SuggestDirective>().Single().Action = new ShowCompletions(
            terminal,
            tree
        );
        return tree;
    }

    /// <summary>The program itself and its commands.</summary>
    public IEnumerable<Command> All => Root.Subcommands.Prepend(Root);

    /// <summary>A command as one types it: the program alone for the root.</summary>
    public static string Call(Command command) =>
        command is RootCommand ? Program : $"{Program} {command.Name}";
}
