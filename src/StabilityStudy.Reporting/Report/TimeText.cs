namespace StabilityStudy.Reporting.Report;

/// <summary>Computed times, in hours or, where they are long, in days.</summary>
internal static class TimeText
{
    private const double LeastInDays = 72;

    /// <summary>Whether so many hours are better read as days.</summary>
    public static bool IsInDays(double hours) => hours >= LeastInDays;

    /// <summary>"7.8 h", "10.7 d".</summary>
    public static string Of(double hours) =>
        IsInDays(hours)
            ? $"{NumberText.Fixed(hours / 24, 1)} d"
            : $"{NumberText.Fixed(hours, 1)} h";
}
