using System.CommandLine;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using StabilityStudy.Cli.Console;

namespace StabilityStudy.Cli.Help;

/// <summary>The directive [suggest:N], which completion scripts use: the words that may stand at column N of the line, one a line; options only where a hyphen was typed, so that a shell proposes files elsewhere.</summary>
internal sealed class ShowCompletions(Terminal terminal, CommandTree tree)
    : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var line = parseResult
            .Tokens.LastOrDefault(token => token.Type != TokenType.Directive)
            ?.Value;
        var stated = parseResult
            .Tokens.First(token => token.Type == TokenType.Directive)
            .Value.Trim('[', ']')
            .Split(':');
        if (
            line is null
            || !int.TryParse(
                stated[^1],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var column
            )
        )
        {
            return (int)ExitCode.WrongUsage;
        }

        var typed = line[..Math.Min(column, line.Length)];
        var wantsOption = typed[(typed.LastIndexOf(' ') + 1)..].StartsWith('-');
        foreach (
            var word in tree
                .Root.Parse(typed)
                .GetCompletions(typed.Length)
                .Select(item => item.Label)
                .Where(label => label.StartsWith('-') == wantsOption)
        )
        {
            terminal.Out.WriteLine(word);
        }

        return (int)ExitCode.Done;
    }
}
