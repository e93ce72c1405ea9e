namespace StabilityStudy.Cli.Console;

/// <summary>The command that comes next, ready to be copied: on the error output, so that a result in a file stays one.</summary>
internal static class NextCommand
{
    public static void Say(Terminal terminal, params ReadOnlySpan<string> words)
    {
        var text = "next: stability-study";
        foreach (var word in words)
        {
            text += " " + Quoted(word);
        }

        terminal.Error.WriteLine(text);
    }

    /// <summary>As a shell takes it for one word.</summary>
    public static string Quoted(string word) =>
        word.All(c => char.IsLetterOrDigit(c) || "-_./\\:=".Contains(c, StringComparison.Ordinal))
            ? word
        : OperatingSystem.IsWindows() ? $"\"{word}\""
        : $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
