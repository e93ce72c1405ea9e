using System.ComponentModel;
using System.Diagnostics;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>Programs that are not part of the project. A missing one skips the test on a user's machine and fails it under CI=true.</summary>
internal static class OutsideTool
{
    public static async Task<Answer> Run(string tool, params string[] arguments)
    {
        var start = new ProcessStartInfo(tool, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        try
        {
            using var process = Process.Start(start)!;
            return await BuiltProgram.Wait(process);
        }
        catch (Win32Exception)
        {
            var reason = $"The program {tool} is not installed.";
            if (Environment.GetEnvironmentVariable("CI") == "true")
            {
                Assert.Fail(reason);
            }

            Assert.Skip(reason);
            throw;
        }
    }
}
