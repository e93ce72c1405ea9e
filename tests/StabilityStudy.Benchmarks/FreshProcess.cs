using System.Diagnostics;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Benchmarks;

/// <summary>
/// Work in a process of its own: only there are the start, the first use of each method and the peak of memory to be
/// seen. The process is this program with one of the words below.
/// </summary>
/// <param name="Total">Milliseconds from start to end of the process.</param>
/// <param name="Steps">Milliseconds of each step.</param>
/// <param name="PeakMegabytes">The most memory that the process held.</param>
internal sealed record FreshProcess(double Total, double[] Steps, double PeakMegabytes)
{
    /// <summary>Does nothing.</summary>
    public const string Start = "--start";

    /// <summary>Reads a study folder and makes its report.</summary>
    public const string Report = "--report";

    /// <summary>Checks a study folder, then analyzes it.</summary>
    public const string CheckAndAnalyze = "--check-and-analyze";

    /// <summary>Runs one of the words in a new process.</summary>
    public static FreshProcess Run(params string[] arguments)
    {
        var start = System.Diagnostics.Stopwatch.GetTimestamp();
        using var process =
            Process.Start(
                new ProcessStartInfo(Environment.ProcessPath!, arguments)
                {
                    RedirectStandardOutput = true,
                    UseShellExecute = false,
                }
            ) ?? throw new InvalidOperationException("No process was started.");
        var printed = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var total = System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        var numbers = printed
            .Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(word => double.Parse(word, CultureInfo.InvariantCulture))
            .ToArray();
        return process.ExitCode == 0
            ? new FreshProcess(total, numbers[..^1], numbers[^1])
            : throw new InvalidOperationException("The process failed: " + printed);
    }

    /// <summary>What the new process does; false when its arguments are none of the words.</summary>
    public static bool Serve(string[] arguments)
    {
        switch (arguments)
        {
            case [Start]:
                Print();
                return true;
            case [Report, var folder]:
                Print(() =>
                {
                    var study = StudyPipeline.Analyze(StudyFiles.Read(folder)).Value;
                    StudyPipeline.Render(study!, PaperSize.A4);
                });
                return true;
            case [CheckAndAnalyze, var folder]:
                Print(
                    () => StudyPipeline.Check(StudyFiles.Read(folder)),
                    () => StudyPipeline.Analyze(StudyFiles.Read(folder))
                );
                return true;
            default:
                return false;
        }
    }

    private static void Print(params Action[] steps)
    {
        foreach (var step in steps)
        {
            var time = Benchmarks.Stopwatch.Once(step);
            Console.Write(string.Create(CultureInfo.InvariantCulture, $"{time:0.0} "));
        }

        using var self = Process.GetCurrentProcess();
        Console.Write(
            string.Create(CultureInfo.InvariantCulture, $"{self.PeakWorkingSet64 / 1e6:0.0}")
        );
    }
}
