using System.CommandLine;
using System.Text;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Help;

/// <summary>A manual page in the man macros of roff (man(7)), for the program or one of its commands.</summary>
internal static class ManualPage
{
    private const int FirstNotAscii = 0x80;

    /// <summary>Name of the file below man1.</summary>
    public static string FileName(Command command) =>
        CommandTree.Call(command).Replace(' ', '-') + ".1";

    public static string Of(CommandTree tree, Command command)
    {
        var text = CommandText.Of(command);
        var page = new StringBuilder();
        var name = CommandTree.Call(command).Replace(' ', '-');
        page.Append(
            CultureInfo.InvariantCulture,
            $".TH {Escaped(name.ToUpperInvariant())} 1 \"\" \"{CommandTree.Program} {ToolVersion.Current}\" \"User Commands\"\n"
        );
        Section(page, "NAME");
        Line(page, $"{name} - {LowerFirst(text.Summary)}");
        Section(page, "SYNOPSIS");
        page.Append(".B ").Append(Escaped(CommandPart.Usage(tree, command))).Append('\n');
        Section(page, "DESCRIPTION");
        foreach (var paragraph in text.Paragraphs)
        {
            page.Append(".PP\n");
            Line(page, paragraph);
        }

        if (command is RootCommand)
        {
            Section(page, "COMMANDS");
            foreach (var group in tree.Groups)
            {
                page.Append(".SS ").Append(Escaped(group.Title)).Append('\n');
                Parts(
                    page,
                    [
                        .. group.Commands.Select(item => new CommandPart(
                            item.Name,
                            CommandText.Of(item).Summary + "."
                        )),
                    ]
                );
            }
        }

        Section(page, "ARGUMENTS", CommandPart.Arguments(command));
        Section(page, "OPTIONS", CommandPart.Options(tree, command));
        if (!text.Examples.IsEmpty)
        {
            Section(page, "EXAMPLES");
            foreach (var line in text.Examples.SelectMany(examples => examples.Lines))
            {
                page.Append(".nf\n.RS\n").Append(Escaped(line)).Append("\n.RE\n.fi\n");
            }
        }

        Section(page, "EXIT STATUS", [.. ExitCodes.All]);
        Section(page, "SEE ALSO");
        Line(
            page,
            string.Join(
                ", ",
                tree.All.Where(other => other != command)
                    .Select(other => CommandTree.Call(other).Replace(' ', '-') + "(1)")
            )
        );
        return page.ToString();
    }

    private static void Section(StringBuilder page, string title) =>
        page.Append(".SH ").Append(title).Append('\n');

    private static void Section(StringBuilder page, string title, ImmutableArray<CommandPart> parts)
    {
        if (!parts.IsEmpty)
        {
            Section(page, title);
            Parts(page, parts);
        }
    }

    private static void Parts(StringBuilder page, ImmutableArray<CommandPart> parts)
    {
        foreach (var part in parts)
        {
            page.Append(".TP\n.B ").Append(Escaped(part.Label)).Append('\n');
            Line(page, part.Description);
        }
    }

    private static void Line(StringBuilder page, string text) =>
        page.Append(Escaped(text)).Append('\n');

    private static string LowerFirst(string text) =>
        text.Length > 1 && char.IsLower(text[1])
            ? char.ToLowerInvariant(text[0]) + text[1..]
            : text;

    /// <summary>Text that roff prints as it stands: no escape, no request at a line's begin, a hyphen that can be copied, other letters by their number.</summary>
    private static string Escaped(string text)
    {
        var escaped = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            escaped.Append(
                rune.Value switch
                {
                    '\\' => "\\e",
                    '-' => "\\-",
                    '\'' => "\\(aq",
                    '"' => "\\(dq",
                    < FirstNotAscii => rune.ToString(),
                    var number => $"\\[u{number.ToString("X4", CultureInfo.InvariantCulture)}]",
                }
            );
        }

        return text.StartsWith('.') ? "\\&" + escaped : escaped.ToString();
    }
}
