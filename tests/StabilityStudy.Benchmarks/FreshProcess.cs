using System.Diagnostics;

namespace StabilityStudy.Benchmarks;

/// <summary>A whole process, from start to end: only there are the start, the first use of each method and the peak of memory to be seen.</summary>
/// <param name="Seconds">Time from start to end.</param>
/// <param name="ProcessorSeconds">Time of all processors together, which other work on the machine changes least.</param>
/// <param name="PeakMegabytes">The most memory that it held.</param>
internal sealed record FreshProcess(double Seconds, double ProcessorSeconds, double PeakMegabytes)
{
    /// <summary>The word with which this program does nothing.</summary>
    public const string Start = "--start";

    /// <summary>What measures a process from outside.</summary>
    private const string Measuring = "/usr/bin/time";

    private const int Runs = 5;

    /// <summary>Whether processes can be measured here.</summary>
    public static bool CanMeasure => File.Exists(Measuring);

    /// <summary>Median time of five runs after one to warm up, with the largest peak.</summary>
    public static FreshProcess Median(string program, params string[] arguments)
    {
        Once(program, arguments);
        var runs = Enumerable.Range(0, Runs).Select(_ => Once(program, arguments)).ToArray();
        return new(
            runs.Select(run => run.Seconds).Order().ElementAt(Runs / 2),
            runs.Select(run => run.ProcessorSeconds).Order().ElementAt(Runs / 2),
            runs.Max(run => run.PeakMegabytes)
        );
    }

    /// <summary>One run. A command that ends with a query or an open question has done its work all the same.</summary>
    public static FreshProcess Once(string program, params string[] arguments)
    {
        var figures = Path.GetTempFileName();
        try
        {
            using var process =
                Process.Start(
                    new ProcessStartInfo(
                        Measuring,
                        ["-q", "-o", figures, "-f", "%e %U %S %M", program, .. arguments]
                    )
                    {
                        RedirectStandardOutput = true,
                        RedirectStandardError = true,
                        UseShellExecute = false,
                    }
                ) ?? throw new InvalidOperationException("No process was started.");
            var errors = process.StandardError.ReadToEndAsync();
            var start = System.Diagnostics.Stopwatch.GetTimestamp();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            var seconds = System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalSeconds;
            if (process.ExitCode is not (0 or 5))
            {
                throw new InvalidOperationException(
                    $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {errors.Result}"
                );
            }

            var numbers = File.ReadAllText(figures)
                .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
                .Select(word => double.Parse(word, CultureInfo.InvariantCulture))
                .ToArray();
            return new(seconds, numbers[1] + numbers[2], numbers[3] / 1024);
        }
        finally
        {
            File.Delete(figures);
        }
    }
}
