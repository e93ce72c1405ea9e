using StabilityStudy.Reporting.Bench;

namespace StabilityStudy.Reporting.Tests.Bench;

/// <summary>On 1 November 2026 clocks in New York go back from 2:00 to 1:00, on 8 March forward from 2:00 to 3:00 (IANA time zone database).</summary>
public sealed class WallClockTests
{
    private static readonly WallClock s_clock = new(
        TimeZoneInfo.FindSystemTimeZoneById("America/New_York")
    );

    private static readonly DateOnly s_autumn = new(2026, 11, 1);

    [Theory]
    [InlineData("2026-11-01T00:30:00-04:00", "00:30")]
    [InlineData("2026-11-01T01:30:00-04:00", "01:30\n−04:00")]
    [InlineData("2026-11-01T01:30:00-05:00", "01:30\n−05:00")]
    [InlineData("2026-11-01T02:30:00-05:00", "02:30")]
    [InlineData("2026-10-31T23:50:00-04:00", "31 Oct\n23:50")]
    public void A_time_that_the_clock_shows_twice_has_its_offset(string time, string words) =>
        Assert.Equal(words, s_clock.Words(Time(time), s_autumn));

    [Fact]
    public void A_tube_collected_before_the_change_falls_due_by_the_clock_after_it()
    {
        var collected = Time("2026-10-31T21:05:00-04:00");

        Assert.Equal("02:05", s_clock.Words(collected.AddHours(6), s_autumn));
        Assert.True(s_clock.Changes(collected, collected.AddHours(6)));
        Assert.False(s_clock.Changes(collected, collected.AddHours(2)));
    }

    [Fact]
    public void In_spring_an_hour_is_left_out() =>
        Assert.Equal(
            "08:30",
            s_clock.Words(Time("2026-03-08T01:30:00-05:00").AddHours(6), new DateOnly(2026, 3, 8))
        );

    [Fact]
    public void Without_a_zone_a_time_keeps_its_offset()
    {
        var clock = new WallClock(null);

        Assert.Equal("01:30", clock.Words(Time("2026-11-01T01:30:00-04:00"), s_autumn));
        Assert.False(
            clock.Changes(Time("2026-10-31T21:05:00-04:00"), Time("2026-11-01T03:05:00-05:00"))
        );
    }

    private static DateTimeOffset Time(string text) =>
        DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
