namespace StabilityStudy.Files.Words;

/// <summary>Days as the files write them: 2026-02-28.</summary>
internal static class StrictDate
{
    /// <summary>Reads a day of the calendar.</summary>
    public static bool TryRead(string text, out DateOnly day) =>
        DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out day
        ) && text.All(char.IsAscii);
}
