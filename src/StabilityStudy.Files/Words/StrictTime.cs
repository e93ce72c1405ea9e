using System.Globalization;

namespace StabilityStudy.Files.Words;

/// <summary>Times as the files write them (ISO 8601): 2026-02-28T14:05, with or without seconds and offset.</summary>
/// <param name="Local">Date and time on the clock.</param>
/// <param name="Offset">Offset from UTC; null when not written.</param>
internal readonly record struct StrictTime(DateTime Local, TimeSpan? Offset)
{
    private const int MinutesLength = 16;
    private const int SecondsLength = 19;
    private const int LargestOffsetHours = 14;

    /// <summary>Reads a time; null when the text is none of the calendar and clock.</summary>
    public static StrictTime? Read(string text)
    {
        var span = text.AsSpan();
        var length =
            span.Length > MinutesLength && span[MinutesLength] == ':'
                ? SecondsLength
                : MinutesLength;
        if (span.Length < length || span.ContainsAnyExceptInRange(' ', '~'))
        {
            return null;
        }

        var format = length == SecondsLength ? "yyyy-MM-ddTHH:mm:ss" : "yyyy-MM-ddTHH:mm";
        if (
            !DateTime.TryParseExact(
                span[..length],
                format,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var local
            )
        )
        {
            return null;
        }

        var rest = span[length..];
        if (rest.IsEmpty)
        {
            return new StrictTime(local, null);
        }

        return ReadOffset(rest) is { } offset && IsOnTheCalendar(local, offset)
            ? new StrictTime(local, offset)
            : null;
    }

    /// <summary>The one form in which times are written: with seconds and offset.</summary>
    public static string Write(DateTimeOffset time) =>
        time.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);

    private static TimeSpan? ReadOffset(ReadOnlySpan<char> text)
    {
        if (text is "Z")
        {
            return TimeSpan.Zero;
        }

        if (
            text.Length != 6
            || text[0] is not ('+' or '-')
            || !TimeSpan.TryParseExact(
                text[1..],
                @"hh\:mm",
                CultureInfo.InvariantCulture,
                out var size
            )
            || size > TimeSpan.FromHours(LargestOffsetHours)
        )
        {
            return null;
        }

        return text[0] == '-' ? -size : size;
    }

    private static bool IsOnTheCalendar(DateTime local, TimeSpan offset) =>
        local.Ticks - offset.Ticks >= DateTime.MinValue.Ticks
        && local.Ticks - offset.Ticks <= DateTime.MaxValue.Ticks;
}
