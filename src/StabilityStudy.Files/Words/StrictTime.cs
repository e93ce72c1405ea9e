namespace StabilityStudy.Files.Words;

/// <summary>Times as the files write them (ISO 8601): 2026-02-28T14:05, with or without seconds and offset.</summary>
/// <param name="Local">Date and time on the clock.</param>
/// <param name="Offset">Offset from UTC; null when not written.</param>
internal readonly record struct StrictTime(DateTime Local, TimeSpan? Offset)
{
    /// <summary>The format of that one form.</summary>
    public const string Form = "yyyy-MM-ddTHH:mm:sszzz";

    private const int MinutesLength = 16;
    private const int SecondsLength = 19;
    public const int WrittenLength = 25;
    private const int NoNumber = -1;
    private const int LargestOffsetHours = 14;

    /// <summary>Reads a time; null when the text is none of the calendar and clock.</summary>
    public static StrictTime? Read(ReadOnlySpan<char> text)
    {
        var length =
            text.Length > MinutesLength && text[MinutesLength] == ':'
                ? SecondsLength
                : MinutesLength;
        if (text.Length < length || ReadLocal(text[..length]) is not { } local)
        {
            return null;
        }

        var rest = text[length..];
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
        time.ToString(Form, CultureInfo.InvariantCulture);

    /// <summary>Writes the same as bytes, digit by digit as it is read.</summary>
    /// <returns>How many bytes.</returns>
    public static int Write(DateTimeOffset time, Span<byte> bytes)
    {
        var (date, clock) = time.DateTime;
        var offset = time.Offset.Duration();
        WriteDigits(date.Year / 100, bytes);
        WriteDigits(date.Year % 100, bytes[2..]);
        bytes[4] = (byte)'-';
        WriteDigits(date.Month, bytes[5..]);
        bytes[7] = (byte)'-';
        WriteDigits(date.Day, bytes[8..]);
        bytes[10] = (byte)'T';
        WriteDigits(clock.Hour, bytes[11..]);
        bytes[13] = (byte)':';
        WriteDigits(clock.Minute, bytes[14..]);
        bytes[16] = (byte)':';
        WriteDigits(clock.Second, bytes[17..]);
        bytes[19] = (byte)(time.Offset < TimeSpan.Zero ? '-' : '+');
        WriteDigits(offset.Hours, bytes[20..]);
        bytes[22] = (byte)':';
        WriteDigits(offset.Minutes, bytes[23..]);
        return WrittenLength;
    }

    private static void WriteDigits(int number, Span<byte> bytes)
    {
        bytes[0] = (byte)('0' + (number / 10));
        bytes[1] = (byte)('0' + (number % 10));
    }

    private static DateTime? ReadLocal(ReadOnlySpan<char> text)
    {
        if (text[4] != '-' || text[7] != '-' || text[10] != 'T' || text[13] != ':')
        {
            return null;
        }

        var (year, month, day) = (Digits(text[..4]), Digits(text[5..7]), Digits(text[8..10]));
        var (hour, minute) = (Digits(text[11..13]), Digits(text[14..16]));
        var second = text.Length == SecondsLength ? Digits(text[17..]) : 0;
        return
            year >= 1
            && month is >= 1 and <= 12
            && day >= 1
            && day <= DateTime.DaysInMonth(year, month)
            && hour is >= 0 and <= 23
            && minute is >= 0 and <= 59
            && second is >= 0 and <= 59
            ? new DateTime(year, month, day, hour, minute, second)
            : null;
    }

    private static TimeSpan? ReadOffset(ReadOnlySpan<char> text)
    {
        if (text is "Z")
        {
            return TimeSpan.Zero;
        }

        if (text.Length != 6 || text[0] is not ('+' or '-') || text[3] != ':')
        {
            return null;
        }

        var (hours, minutes) = (Digits(text[1..3]), Digits(text[4..]));
        if (hours < 0 || minutes < 0)
        {
            return null;
        }

        var size = new TimeSpan(hours, minutes, 0);
        return minutes > 59 || size > TimeSpan.FromHours(LargestOffsetHours) ? null
            : text[0] == '-' ? -size
            : size;
    }

    // Read digit by digit: the parser of the framework is the slowest step of reading a million rows.
    private static int Digits(ReadOnlySpan<char> text)
    {
        var number = 0;
        foreach (var c in text)
        {
            if (!char.IsAsciiDigit(c))
            {
                return NoNumber;
            }

            number = 10 * number + (c - '0');
        }

        return number;
    }

    private static bool IsOnTheCalendar(DateTime local, TimeSpan offset) =>
        local.Ticks - offset.Ticks >= DateTime.MinValue.Ticks
        && local.Ticks - offset.Ticks <= DateTime.MaxValue.Ticks;
}
