using System.Diagnostics;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>Runs a program that is not part of .NET.</summary>
internal static class OutsideTool
{
    /// <summary>Gives what the program prints; skips the test if it is not installed, but fails it under CI=true.</summary>
    public static (int ExitCode, string Output) Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(
                new ProcessStartInfo(program, arguments)
                {
                    UseShellExecute = false,
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                }
            )!;
            var errors = process.StandardError.ReadToEndAsync(
                TestContext.Current.CancellationToken
            );
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output + errors.Result);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            var reason = program + " is not installed.";
            if (Environment.GetEnvironmentVariable("CI") is "true")
            {
                Assert.Fail(reason);
            }

            Assert.Skip(reason);
            throw;
        }
    }
}
