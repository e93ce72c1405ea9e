namespace StabilityStudy.Cli.Commands;

/// <summary>Days as they are written at the command line: 2026-02-28.</summary>
internal static class DayText
{
    /// <summary>The day; null for a text that is none.</summary>
    public static DateOnly? Read(string text) =>
        DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var day
        )
            ? day
            : null;

    /// <summary>The day of an option, and today where it is not given.</summary>
    /// <exception cref="UsageException">The text is no day.</exception>
    public static DateOnly OrToday(string? text, string option, DateTimeOffset now) =>
        text is null ? DateOnly.FromDateTime(now.DateTime) : Of(text, option);

    /// <summary>The day of an option.</summary>
    /// <exception cref="UsageException">The text is no day.</exception>
    public static DateOnly Of(string text, string option) =>
        Read(text)
        ?? throw new UsageException($"{option} is a day, YYYY-MM-DD; \"{text}\" is none.");
}
