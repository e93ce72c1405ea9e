using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Lines as wide as the terminal.</summary>
internal static class WrappedText
{
    /// <summary>Writes a line as it stands when it fits, so that its columns stay; else it is broken at spaces.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="text">The line.</param>
    /// <param name="indent">Before the lines that follow.</param>
    public static void Write(Terminal terminal, string text, string indent = "")
    {
        if (TextLines.Length(text) <= terminal.Width)
        {
            terminal.Out.WriteLine(text);
            return;
        }

        var margin = text.Length - text.TrimStart().Length;
        var lines = TextLines.WrapLine(
            text,
            terminal.Width,
            new string(' ', Math.Max(margin, indent.Length))
        );
        terminal.Out.WriteLine(new string(' ', margin) + lines[0].TrimStart());
        foreach (var line in lines[1..])
        {
            terminal.Out.WriteLine(indent + line.TrimStart());
        }
    }
}
