using StabilityStudy.Files.Intake;

namespace StabilityStudy.Cli.Console;

/// <summary>The moment of a check, and times as the people of a study read them: in its zone, with the date unless it is that of the check.</summary>
internal sealed class StudyTime
{
    private const string WithoutOffset = "yyyy-MM-dd'T'HH:mm";
    private const string WithOffset = "yyyy-MM-dd'T'HH:mmzzz";
    private readonly TimeZoneInfo? _zone;

    private StudyTime(TimeZoneInfo? zone, DateTimeOffset asOf)
    {
        _zone = zone;
        AsOf = asOf;
    }

    /// <summary>The moment, with the offset of the study's zone.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>The moment that was asked for, or else that of the clock.</summary>
    /// <exception cref="UsageException">What was asked for is no time, or needs an offset.</exception>
    public static StudyTime Of(StudyBytes files, string? asked, TimeProvider clock)
    {
        var zone =
            StudyIntake.TimeZoneOf(files) is { } name
            && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var found)
                ? found
                : null;
        var now = asked is null
            ? zone is null
                ? clock.GetLocalNow()
                : clock.GetUtcNow()
            : DateTimeOffset.TryParseExact(
                asked,
                WithOffset,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var exact
            )
                ? exact
                : Local(asked, zone);
        // To the minute, as it is shown, so that the same can be asked for again.
        now = new DateTimeOffset(now.Ticks - (now.Ticks % TimeSpan.TicksPerMinute), now.Offset);
        return new StudyTime(zone, zone is null ? now : TimeZoneInfo.ConvertTime(now, zone));
    }

    /// <summary>"14:20" on the day of the check, else "2026-03-05 14:20".</summary>
    public string Short(DateTimeOffset time)
    {
        var here = Here(time);
        return here.Date == AsOf.Date
            ? here.ToString("HH:mm", CultureInfo.InvariantCulture)
            : Whole(time);
    }

    /// <summary>"2026-03-05 14:20".</summary>
    public string Whole(DateTimeOffset time) =>
        Here(time).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Whether it lies on the day of the check.</summary>
    public bool IsToday(DateTimeOffset time) => Here(time).Date == AsOf.Date;

    private DateTimeOffset Here(DateTimeOffset time) =>
        _zone is null ? time.ToOffset(AsOf.Offset) : TimeZoneInfo.ConvertTime(time, _zone);

    private static DateTimeOffset Local(string asked, TimeZoneInfo? zone)
    {
        const string Example =
            "Write it like 2026-03-05T14:20, or with its offset: 2026-03-05T14:20-05:00.";
        if (
            !DateTime.TryParseExact(
                asked,
                WithoutOffset,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var local
            )
        )
        {
            throw new UsageException($"--as-of: \"{asked}\" is no time. {Example}");
        }

        if (zone is null)
        {
            throw new UsageException(
                $"--as-of: study.toml names no time zone, so the time needs its offset: {asked}-05:00."
            );
        }

        return zone.IsInvalidTime(local) || zone.IsAmbiguousTime(local)
            ? throw new UsageException(
                $"--as-of: {asked} is no time, or is two, in {zone.Id}, where clocks are changed then. Write it with its offset."
            )
            : new DateTimeOffset(local, zone.GetUtcOffset(local));
    }
}
