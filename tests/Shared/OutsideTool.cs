using System.ComponentModel;
using System.Diagnostics;

namespace StabilityStudy.Tests.Shared;

/// <summary>What an outside program answered.</summary>
internal sealed record ToolAnswer(int ExitCode, string Out, string Error)
{
    public string[] Lines => Out.TrimEnd().ReplaceLineEndings("\n").Split('\n');
}

/// <summary>
/// Runs programs that are not part of the project. The one rule for a missing one: on a user's machine the test is
/// skipped and says why; in continuous integration (CI=true) it fails.
/// </summary>
internal static class OutsideTool
{
    public static async Task<ToolAnswer> Run(string tool, params string[] arguments)
    {
        var start = new ProcessStartInfo(tool, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        Process? process = null;
        try
        {
            process = Process.Start(start);
        }
        catch (Win32Exception)
        {
            // The only sign that there is no such program.
        }

        if (process is null)
        {
            Missing($"The program {tool} is not installed.");
            throw new InvalidOperationException("Not reached.");
        }

        using (process)
        {
            var cancellation = TestContext.Current.CancellationToken;
            var output = process.StandardOutput.ReadToEndAsync(cancellation);
            var errors = process.StandardError.ReadToEndAsync(cancellation);
            await process.WaitForExitAsync(cancellation);
            return new ToolAnswer(process.ExitCode, await output, await errors);
        }
    }

    /// <summary>A file that an outside program needs.</summary>
    public static void Require(string path)
    {
        if (!File.Exists(path))
        {
            Missing($"There is no {path}.");
        }
    }

    private static void Missing(string reason)
    {
        if (
            string.Equals(
                Environment.GetEnvironmentVariable("CI"),
                "true",
                StringComparison.Ordinal
            )
        )
        {
            Assert.Fail(reason);
        }

        Assert.Skip(reason);
    }
}
