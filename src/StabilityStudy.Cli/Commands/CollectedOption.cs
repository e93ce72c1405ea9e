using StabilityStudy.Core.Text;

namespace StabilityStudy.Cli.Commands;

/// <summary>When a specimen was collected, as it stands on the label, by the clock and zone of this computer: "22:10", the last time that it was so, or "2026-05-04 22:10".</summary>
internal static class CollectedOption
{
    private const string TimeOfDay = "H:mm";

    private static readonly string[] s_withDay = ["yyyy-MM-dd H:mm", "yyyy-MM-dd'T'H:mm"];

    /// <summary>How long ago that was.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="option">Name of the option.</param>
    /// <param name="clock">The clock.</param>
    /// <exception cref="UsageException">It is no time, lies in the future, or does not exist because the clocks were changed.</exception>
    public static TimeSpan Ago(string text, string option, TimeProvider clock)
    {
        var now = clock.GetLocalNow();
        var zone = clock.LocalTimeZone;
        var trimmed = text.Trim();
        if (
            TimeOnly.TryParseExact(
                trimmed,
                TimeOfDay,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var time
            )
        )
        {
            var today = DateOnly.FromDateTime(now.DateTime).ToDateTime(time);
            return Since(At(today) is var at && at <= now ? at : At(today.AddDays(-1)));
        }

        if (
            !DateTime.TryParseExact(
                trimmed,
                s_withDay,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var moment
            )
        )
        {
            throw new UsageException(
                $"{option}: \"{UnseenCharacters.Shown(trimmed)}\" is no time. Write it as 22:10, the last time that it was so, or \"2026-05-04 22:10\"."
            );
        }

        return At(moment) is var then && then <= now
            ? Since(then)
            : throw new UsageException($"{option}: {trimmed} lies in the future.");

        TimeSpan Since(DateTimeOffset then) => now - then;

        // Of an hour that exists twice the first one: the specimen is as old as it can be.
        DateTimeOffset At(DateTime local) =>
            zone.IsInvalidTime(local)
                ? throw new UsageException(
                    $"{option}: {trimmed} does not exist, since the clocks were put forward. Give --waited."
                )
            : zone.IsAmbiguousTime(local) ? new(local, zone.GetAmbiguousTimeOffsets(local).Max())
            : new(local, zone.GetUtcOffset(local));
    }
}
