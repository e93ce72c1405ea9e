using System.CommandLine;
using System.CommandLine.Invocation;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Help;

namespace StabilityStudy.Cli;

/// <summary>The command line: parses, runs one command, turns every ending into an exit code.</summary>
public static class Application
{
    /// <summary>Runs the program.</summary>
    /// <param name="arguments">The arguments after the program's name.</param>
    /// <param name="terminal">Where to write.</param>
    /// <param name="cancellation">Stops the command before it writes anything, as Ctrl+C does.</param>
    public static async Task<ExitCode> RunAsync(
        IReadOnlyList<string> arguments,
        Terminal terminal,
        CancellationToken cancellation
    )
    {
        var tree = CommandTree.Create(terminal);
        var parsed = tree.Root.Parse(
            arguments,
            new ParserConfiguration { ResponseFileTokenReplacer = null }
        );
        if (parsed.Action is ParseErrorAction)
        {
            foreach (var line in UsageErrors.Of(tree, parsed))
            {
                terminal.Error.WriteLine(line);
            }

            return ExitCode.WrongUsage;
        }

        try
        {
            return (ExitCode)
                await parsed.InvokeAsync(
                    new InvocationConfiguration
                    {
                        Output = terminal.Out,
                        Error = terminal.Error,
                        EnableDefaultExceptionHandler = false,
                    },
                    cancellation
                );
        }
        catch (UsageException error)
        {
            terminal.Error.WriteLine(error.Message);
            return ExitCode.WrongUsage;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("Cancelled. Nothing was left half written.");
            return ExitCode.Cancelled;
        }
        // Trouble with a file is a UsageException by now; what is left is the output itself, such as a full disk behind ">".
        // A missing part of the program is one of the derived types, and a defect.
        catch (IOException error) when (error.GetType() == typeof(IOException))
        {
            terminal.Error.WriteLine("The output cannot be written: " + error.Message);
            return ExitCode.WrongUsage;
        }
#pragma warning disable CA1031 // The one place where anything unforeseen becomes an exit code.
        catch (Exception error)
#pragma warning restore CA1031
        {
            terminal.Error.WriteLine(
                "An error inside the program; please report it with the study's inputs:"
            );
            terminal.Error.Write(error + "\n");
            return ExitCode.InternalError;
        }
    }
}
