using StabilityStudy.Cli.Console;

namespace StabilityStudy.Cli.Tests;

/// <summary>What one call of the program gave.</summary>
internal sealed record Run(ExitCode Code, string Out, string Error)
{
    public static Task<Run> Of(params string[] arguments) =>
        Of(usesColor: false, TestContext.Current.CancellationToken, arguments);

    public static Task<Run> Of(
        bool usesColor,
        CancellationToken cancellation,
        params string[] arguments
    ) => With(terminal => terminal with { UsesColor = usesColor }, cancellation, arguments);

    /// <summary>The same at a terminal that is otherwise than usual.</summary>
    public static async Task<Run> With(
        Func<Terminal, Terminal> change,
        CancellationToken cancellation,
        params string[] arguments
    )
    {
        await using var output = new StringWriter();
        await using var error = new StringWriter();
        var terminal = new Terminal(
            output,
            error,
            ShowsProgress: false,
            UsesColor: false,
            Terminal.DefaultWidth
        );
        var code = await Application.RunAsync(arguments, change(terminal), cancellation);
        return new Run(code, output.ToString(), error.ToString());
    }

    /// <summary>An output without the line breaks that the width of the terminal gives it.</summary>
    public static string OneLine(string text) =>
        string.Join(
            ' ',
            text.Split((char[])[' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries)
        );

    /// <summary>Signs a report with a key of the copy's folder "keys".</summary>
    public static Task<Run> Sign(
        StudyCopy copy,
        string report,
        string role,
        string key,
        params string[] more
    ) =>
        Of([
            "sign",
            report,
            "--role",
            role,
            "--key",
            copy.At("keys", key + ".p12"),
            "--passphrase-file",
            copy.At("keys", key + ".passphrase"),
            .. more,
        ]);
}
