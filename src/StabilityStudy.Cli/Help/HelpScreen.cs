using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Help;

/// <summary>Help at a terminal: for the program its commands along the way of a study, for a command its options and examples.</summary>
internal sealed class HelpScreen(Terminal terminal, CommandTree tree)
{
    private const int Indent = 2;
    private const int WidestLabel = 24;

    public void Write(Command command)
    {
        var text = CommandText.Of(command);
        foreach (var paragraph in text.Paragraphs)
        {
            Lines(paragraph);
            terminal.Out.WriteLine();
        }

        Heading("Usage");
        Example(CommandPart.Usage(tree, command));
        terminal.Out.WriteLine();
        if (command is RootCommand)
        {
            foreach (var group in tree.Groups)
            {
                Group(group);
            }
        }

        Parts("Arguments", CommandPart.Arguments(command));
        Parts("Options", CommandPart.Options(tree, command));
        foreach (var examples in text.Examples)
        {
            Heading(examples.Heading);
            foreach (var line in examples.Lines)
            {
                Example(line);
            }

            terminal.Out.WriteLine();
        }

        terminal.Out.WriteLine(
            command is RootCommand
                ? $"Help for one command: {CommandTree.Program} COMMAND --help"
                : $"All commands: {CommandTree.Program} --help"
        );
    }

    private void Group(CommandGroup group)
    {
        Parts(
            group.Title,
            [
                .. group.Commands.Select(command => new CommandPart(
                    command.Name,
                    CommandText.Of(command).Summary
                )),
            ],
            spaced: false
        );
        Example("For example: " + group.Example);
        terminal.Out.WriteLine();
    }

    private void Heading(string title) => terminal.Out.WriteLine(title + ":");

    private void Parts(string title, ImmutableArray<CommandPart> parts, bool spaced = true)
    {
        if (parts.IsEmpty)
        {
            return;
        }

        Heading(title);
        var widest = Math.Min(WidestLabel, parts.Max(part => part.Label.Length));
        var column = Indent + widest + Indent;
        foreach (var part in parts)
        {
            var lines = TextLines.WrapLine(part.Description, terminal.Width - column);
            var label = new string(' ', Indent) + part.Label;
            var rest = lines.AsEnumerable();
            if (part.Label.Length > widest)
            {
                terminal.Out.WriteLine(label);
            }
            else
            {
                terminal.Out.WriteLine((label.PadRight(column) + lines[0]).TrimEnd());
                rest = lines.Skip(1);
            }

            foreach (var line in rest)
            {
                terminal.Out.WriteLine(new string(' ', column) + line);
            }
        }

        if (spaced)
        {
            terminal.Out.WriteLine();
        }
    }

    private void Example(string line)
    {
        foreach (var part in ShellWords.Wrap(line, terminal.Width - Indent, "    "))
        {
            terminal.Out.WriteLine(new string(' ', Indent) + part);
        }
    }

    private void Lines(string text)
    {
        foreach (var line in TextLines.WrapLine(text, terminal.Width))
        {
            terminal.Out.WriteLine(line);
        }
    }
}
