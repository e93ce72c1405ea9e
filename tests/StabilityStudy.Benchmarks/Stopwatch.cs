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
            times[i] = Once(run);
        }

        Array.Sort(times);
        return times[Runs / 2];
    }

    /// <summary>Milliseconds that something takes, whether warm or not.</summary>
    public static double Once(Action run)
    {
        var start = System.Diagnostics.Stopwatch.GetTimestamp();
        run();
        return System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
