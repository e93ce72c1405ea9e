using System.Diagnostics;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>What a process answered.</summary>
internal sealed record Answer(int ExitCode, string Out, string Error)
{
    public string[] Lines => Out.TrimEnd().ReplaceLineEndings("\n").Split('\n');
}

/// <summary>The program as it was built, in a process of its own: compiled just in time, or, where NATIVE_PROGRAM names it, the native one.</summary>
internal static class BuiltProgram
{
    /// <summary>The build copies the program beside the tests.</summary>
    private static readonly string s_path = System.IO.Path.Combine(
        AppContext.BaseDirectory,
        "stability-study.dll"
    );

    private static readonly string? s_native = Environment.GetEnvironmentVariable("NATIVE_PROGRAM");

    /// <summary>How a shell calls it.</summary>
    public static string Command =>
        s_native is { Length: > 0 } ? $"'{s_native}'" : $"dotnet '{s_path}'";

    public static Task<Answer> Run(params string[] arguments) => Run(_ => { }, arguments);

    /// <summary>Runs it and asks that it succeeds.</summary>
    public static async Task Done(params string[] arguments)
    {
        var answer = await Run(arguments);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }

    /// <summary>Runs it with another environment or working directory.</summary>
    public static async Task<Answer> Run(
        Action<ProcessStartInfo> configure,
        params string[] arguments
    )
    {
        using var process = Start(configure, arguments);
        return await Wait(process);
    }

    /// <summary>Runs the command line of the SDK, or a program that it runs.</summary>
    public static async Task<Answer> Dotnet(params string[] arguments)
    {
        using var process = StartDotnet(
            start =>
            {
                // What the SDK that runs the tests has set for itself.
                foreach (
                    var name in start
                        .Environment.Keys.Where(name =>
                            name.StartsWith("MSBuild", StringComparison.OrdinalIgnoreCase)
                        )
                        .ToArray()
                )
                {
                    start.Environment.Remove(name);
                }
            },
            arguments
        );
        return await Wait(process);
    }

    public static Process Start(Action<ProcessStartInfo> configure, params string[] arguments) =>
        s_native is { Length: > 0 }
            ? StartProgram(s_native, configure, arguments)
            : StartDotnet(configure, [s_path, .. arguments]);

    private static Process StartDotnet(
        Action<ProcessStartInfo> configure,
        params string[] arguments
    ) => StartProgram("dotnet", configure, arguments);

    private static Process StartProgram(
        string program,
        Action<ProcessStartInfo> configure,
        string[] arguments
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        configure(start);
        return Process.Start(start)!;
    }

    public static async Task<Answer> Wait(Process process)
    {
        var cancellation = TestContext.Current.CancellationToken;
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var error = process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        return new Answer(process.ExitCode, await output, await error);
    }
}
