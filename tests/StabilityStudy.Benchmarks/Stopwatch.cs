namespace StabilityStudy.Benchmarks;

/// <summary>Measures how long something takes.</summary>
internal static class Stopwatch
{
    private const int Runs = 5;

    /// <summary>Median time of five runs after one to warm up.</summary>
    public static double Median(Action run)
    {
        run();
        var times = new double[Runs];
        for (var i = 0; i < Runs; i++)
        {
            var start = System.Diagnostics.Stopwatch.GetTimestamp();
            run();
            times[i] = System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[Runs / 2];
    }
}
