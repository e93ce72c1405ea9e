using System.CommandLine;
using System.CommandLine.Invocation;
using StabilityStudy.Cli.Console;

namespace StabilityStudy.Cli.Help;

/// <summary>--help.</summary>
internal sealed class ShowHelp(Terminal terminal, CommandTree tree) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        new HelpScreen(terminal, tree).Write(parseResult.CommandResult.Command);
        return (int)ExitCode.Done;
    }
}
