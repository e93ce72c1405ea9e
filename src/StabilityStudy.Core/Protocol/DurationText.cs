using System.Text.RegularExpressions;

namespace StabilityStudy.Core.Protocol;

/// <summary>Durations as they are written in the study files: a whole number and a unit, "15 min", "4 h", "14 d".</summary>
public static partial class DurationText
{
    private const int LongestDays = 3660;
    private const double LeastHoursInDays = 72;

    /// <summary>Reads a duration.</summary>
    /// <param name="text">"15 min", "4 h" or "14 d"; one space, no decimals, at most ten years.</param>
    /// <param name="duration">The duration, when the text is one.</param>
    public static bool TryParse(string text, out TimeSpan duration)
    {
        duration = TimeSpan.Zero;
        var match = Shape().Match(text);
        if (
            !match.Success
            || !int.TryParse(
                match.Groups["count"].ValueSpan,
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var count
            )
        )
        {
            return false;
        }

        var minutes = match.Groups["unit"].Value switch
        {
            "min" => count,
            "h" => count * 60L,
            _ => count * 1440L,
        };
        if (minutes > LongestDays * 1440L)
        {
            return false;
        }

        duration = TimeSpan.FromMinutes(minutes);
        return true;
    }

    /// <summary>Writes a duration with the largest unit that needs no decimals: "90 min", "6 h", "14 d". Hours are kept up to 72 h.</summary>
    public static string Format(TimeSpan duration)
    {
        var minutes = (long)Math.Floor(duration.TotalMinutes);
        if (minutes == 0 || minutes % 60 != 0)
        {
            return FormattableString.Invariant($"{minutes} min");
        }

        return minutes % 1440 == 0 && minutes > 72 * 60
            ? FormattableString.Invariant($"{minutes / 1440} d")
            : FormattableString.Invariant($"{minutes / 60} h");
    }

    /// <summary>Whether so many hours are better read as days.</summary>
    public static bool IsInDays(double hours) => hours >= LeastHoursInDays;

    /// <summary>Writes a computed time with one decimal: "7.8 h", "10.7 d".</summary>
    public static string FormatComputed(double hours) =>
        IsInDays(hours)
            ? FormattableString.Invariant($"{hours / 24:0.0} d")
            : FormattableString.Invariant($"{hours:0.0} h");

    /// <summary>Writes a window: "8 h", "7 h 30 min", "14 d".</summary>
    public static string FormatWindow(TimeSpan duration) =>
        duration > TimeSpan.FromHours(1) && duration.Minutes != 0
            ? FormatToMinute(duration)
            : Format(duration);

    /// <summary>Reads a window as <see cref="FormatWindow"/> writes it: a duration, or hours and minutes, "7 h 30 min".</summary>
    public static bool TryParseWindow(string text, out TimeSpan window)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hours = text.IndexOf(" h ", StringComparison.Ordinal) + 2;
        if (hours < 2)
        {
            return TryParse(text, out window);
        }

        var isWindow =
            TryParse(text[..hours], out window) & TryParse(text[(hours + 1)..], out var minutes)
            && minutes < TimeSpan.FromHours(1);
        window += minutes;
        return isWindow;
    }

    /// <summary>Writes an actual delay to the minute: "6 h 04 min".</summary>
    public static string FormatToMinute(TimeSpan duration)
    {
        var minutes = (long)Math.Floor(duration.TotalMinutes);
        return minutes < 60
            ? FormattableString.Invariant($"{minutes} min")
            : FormattableString.Invariant($"{minutes / 60} h {minutes % 60:00} min");
    }

    [GeneratedRegex(
        "^(?<count>[0-9]{1,7}) (?<unit>min|h|d)$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Shape();
}
