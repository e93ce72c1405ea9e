using System.CommandLine;
using System.Text;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Cli.Help;

namespace StabilityStudy.Cli.Commands;

/// <summary>manual: manual pages, made from the same commands as the help.</summary>
internal static class ManualCommand
{
    public static Command Create(Terminal terminal, Func<CommandTree> tree)
    {
        var folder = new Argument<string>("FOLDER")
        {
            Description = "Where the pages go, such as man1; made when it is not there.",
        };
        var command = new Command(
            "manual",
            "Write a manual page for the program and one for each command, to be read with man.\n\nExamples:\n  stability-study manual ~/.local/share/man/man1\n  man stability-study-check"
        )
        {
            folder,
        };
        command.SetAction(parsed =>
        {
            var target = parsed.GetRequiredValue(folder);
            var pages = tree()
                .All.Select(item =>
                    (
                        Path.Combine(target, ManualPage.FileName(item)),
                        (ReadOnlyMemory<byte>)Encoding.ASCII.GetBytes(ManualPage.Of(tree(), item))
                    )
                )
                .ToArray();
            AtomicFile.Write(pages);
            foreach (var (path, _) in pages)
            {
                terminal.Out.WriteLine(path);
            }

            return (int)ExitCode.Done;
        });
        return command;
    }
}
