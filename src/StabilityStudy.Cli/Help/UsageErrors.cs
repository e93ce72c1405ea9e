using System.CommandLine;
using System.CommandLine.Parsing;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Cli.Help;

/// <summary>What is wrong with a call, and the command or option that was probably meant.</summary>
internal static class UsageErrors
{
    public static IEnumerable<string> Of(CommandTree tree, ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        if (command is RootCommand)
        {
            // What follows an unknown command cannot be read without it.
            yield return parsed.UnmatchedTokens is [{ } typed, ..]
                ? $"There is no command \"{typed}\"."
                    + NearestWord.Question(typed, tree.Root.Subcommands.Select(known => known.Name))
                : "Which command? Give one.";
            yield return $"All commands: {CommandTree.Program} --help";
            yield break;
        }

        foreach (var error in parsed.Errors)
        {
            yield return error.Message + Meant(tree, command, parsed, error);
        }

        yield return $"What can be asked: {CommandTree.Call(command)} --help";
    }

    private static string Meant(
        CommandTree tree,
        Command command,
        ParseResult parsed,
        ParseError error
    ) =>
        parsed.UnmatchedTokens.FirstOrDefault(token =>
            token.StartsWith('-') && error.Message.Contains($"'{token}'", StringComparison.Ordinal)
        )
            is { } typed
            ? NearestWord.Question(
                typed.Split('=', ':')[0],
                command
                    .Options.Concat(tree.Root.Options)
                    .Where(option => !option.Hidden)
                    .SelectMany(option => option.Aliases.Append(option.Name))
            )
            : "";
}
