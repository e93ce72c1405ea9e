using System.CommandLine;
using System.CommandLine.Completions;
using System.Text.Json;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Protocols;

namespace StabilityStudy.Cli.Commands;

/// <summary>protocols: lists the ready protocols, or prints one.</summary>
internal static class ProtocolsCommand
{
    private static readonly JsonWriterOptions s_indented = new()
    {
        Indented = true,
        NewLine = "\n",
    };

    public static Command Create(Terminal terminal)
    {
        var name = new Argument<string?>("NAME")
        {
            Description = "Ready protocol to print; without it they are listed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        name.CompletionSources.Add(_ =>
            ReadyProtocol.Names.Select(item => new CompletionItem(item))
        );
        var json = StudyArgument.Json("Write the list, or the protocol with its name, as JSON.");
        var command = new Command(
            "protocols",
            "List the ready protocols, or print one to adapt and lock.\n\nExample:\n  stability-study protocols frozen-plasma-20"
        )
        {
            name,
            json,
        };
        command.SetAction(parsed =>
            (int)Run(terminal, parsed.GetValue(name), parsed.GetValue(json))
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string? name, bool json)
    {
        if (name is null)
        {
            var all = ReadyProtocol.All();
            if (json)
            {
                WriteJson(terminal, writer => WriteList(writer, all));
            }
            else
            {
                List(terminal, all);
            }

            return ExitCode.Done;
        }

        var protocol = ReadyProtocol.Find(name);
        if (json)
        {
            WriteJson(terminal, writer => WriteOne(writer, protocol, withText: true));
        }
        else
        {
            terminal.Out.Write(protocol.Text);
        }

        return ExitCode.Done;
    }

    private static void List(Terminal terminal, ImmutableArray<ReadyProtocol> all)
    {
        foreach (var protocol in all)
        {
            terminal.Out.WriteLine(protocol.Name);
            WrappedText.Write(terminal, "    " + protocol.Question, "    ");
        }
    }

    private static void WriteJson(Terminal terminal, Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, s_indented))
        {
            write(writer);
        }

        terminal.WriteJson(bytes.ToArray());
    }

    private static void WriteList(Utf8JsonWriter writer, ImmutableArray<ReadyProtocol> all)
    {
        writer.WriteStartObject();
        writer.WriteStartArray("protocols");
        foreach (var protocol in all)
        {
            WriteOne(writer, protocol, withText: false);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteOne(Utf8JsonWriter writer, ReadyProtocol protocol, bool withText)
    {
        writer.WriteStartObject();
        writer.WriteString("name", protocol.Name);
        writer.WriteString("question", protocol.Question);
        if (withText)
        {
            writer.WriteString("text", protocol.Text);
        }

        writer.WriteEndObject();
    }
}
