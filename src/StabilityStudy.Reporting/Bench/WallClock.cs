namespace StabilityStudy.Reporting.Bench;

/// <summary>Times as the clock on the wall shows them.</summary>
/// <param name="zone">The zone; null where times keep their offset.</param>
internal sealed class WallClock(TimeZoneInfo? zone)
{
    /// <summary>The date there.</summary>
    public DateOnly DateOf(DateTimeOffset time) => DateOnly.FromDateTime(Here(time).DateTime);

    /// <summary>"13:05"; with its offset where clocks show that time twice, and with its date where that is another than the one given.</summary>
    public string Words(DateTimeOffset time, DateOnly date)
    {
        var here = Here(time);
        var day =
            DateOnly.FromDateTime(here.DateTime) == date
                ? ""
                : here.ToString("d MMM\n", CultureInfo.InvariantCulture);
        var twice = IsTwice(here)
            ? here.ToString("\nzzz", CultureInfo.InvariantCulture).Replace('-', '−')
            : "";
        return day + here.ToString("HH:mm", CultureInfo.InvariantCulture) + twice;
    }

    /// <summary>Whether clocks are changed between two times.</summary>
    public bool Changes(DateTimeOffset from, DateTimeOffset until) =>
        zone is not null && zone.GetUtcOffset(from) != zone.GetUtcOffset(until);

    private bool IsTwice(DateTimeOffset here) => zone?.IsAmbiguousTime(here.DateTime) == true;

    private DateTimeOffset Here(DateTimeOffset time) =>
        zone is null ? time : TimeZoneInfo.ConvertTime(time, zone);
}
