using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Help;

namespace StabilityStudy.Cli.Commands;

/// <summary>completions: the script with which a shell completes commands and options.</summary>
internal static class CompletionsCommand
{
    public static Command Create(Terminal terminal)
    {
        var shell = new Argument<string>("SHELL")
        {
            Description = string.Join(", ", CompletionScript.ByShell.Keys) + ".",
        }.AcceptOnlyFromAmong([.. CompletionScript.ByShell.Keys]);
        var command = new Command(
            "completions",
            "Print the script with which a shell completes commands, options and their words.\n\nExamples:\n  stability-study completions bash > ~/.local/share/bash-completion/completions/stability-study\n  stability-study completions fish > ~/.config/fish/completions/stability-study.fish"
        )
        {
            shell,
        };
        command.SetAction(parsed =>
        {
            terminal.Out.Write(CompletionScript.ByShell[parsed.GetRequiredValue(shell)] + "\n");
            return (int)ExitCode.Done;
        });
        return command;
    }
}
