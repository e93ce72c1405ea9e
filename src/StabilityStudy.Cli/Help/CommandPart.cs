using System.CommandLine;

namespace StabilityStudy.Cli.Help;

/// <summary>An argument or option of a command, as help and manual name it.</summary>
/// <param name="Label">As it is typed, such as "--trust FILE".</param>
/// <param name="Description">What it does, with its default.</param>
internal sealed record CommandPart(string Label, string Description)
{
    /// <summary>The arguments, in their order.</summary>
    public static ImmutableArray<CommandPart> Arguments(Command command) =>
        [
            .. command
                .Arguments.Where(argument => !argument.Hidden)
                .Select(argument => new CommandPart(
                    argument.Name,
                    argument.Description + DefaultOf(argument)
                )),
        ];

    /// <summary>The options: the command's own, then those that every command has.</summary>
    public static ImmutableArray<CommandPart> Options(CommandTree tree, Command command) =>
        [
            .. AllOptions(tree, command)
                .Select(option => new CommandPart(
                    string.Join(", ", option.Aliases.Append(option.Name)) + ValueOf(option),
                    option.Description + (option.Required ? " Required." : DefaultOf(option))
                )),
        ];

    /// <summary>A call of the command with its arguments and what it requires.</summary>
    public static string Usage(CommandTree tree, Command command) =>
        string.Join(
            ' ',
            [
                CommandTree.Call(command),
                .. command.Subcommands.Count > 0 ? (string[])["COMMAND"] : [],
                .. command.Arguments.Select(argument =>
                    (
                        argument.Arity.MinimumNumberOfValues == 0
                            ? $"[{argument.Name}]"
                            : argument.Name
                    ) + (argument.Arity.MaximumNumberOfValues > 1 ? " ..." : "")
                ),
                .. AllOptions(tree, command)
                    .Where(option => option.Required)
                    .Select(option => option.Name + ValueOf(option)),
                "[options]",
            ]
        );

    private static IEnumerable<Option> AllOptions(CommandTree tree, Command command) =>
        command
            .Options.Concat(
                command is RootCommand ? [] : tree.Root.Options.Where(option => option.Recursive)
            )
            .Where(option => !option.Hidden);

    private static string ValueOf(Option option) =>
        option.Arity.MaximumNumberOfValues == 0 || option.ValueType == typeof(bool)
            ? ""
            : " " + (option.HelpName ?? "VALUE");

    private static string DefaultOf(Option option) =>
        option.HasDefaultValue ? Shown(option.GetDefaultValue()) : "";

    private static string DefaultOf(Argument argument) =>
        argument.HasDefaultValue ? Shown(argument.GetDefaultValue()) : "";

    // What a person would type; an empty list or "off" says nothing.
    private static string Shown(object? value) =>
        value switch
        {
            string text => $" Usually {text}.",
            IFormattable number => string.Create(
                CultureInfo.InvariantCulture,
                $" Usually {number}."
            ),
            _ => "",
        };
}
