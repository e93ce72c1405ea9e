using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class UnknownGroupTests
{
    /// <summary>Today's window of the examples is 4 h; a group that nobody studied may bear a delay worse than those studied.</summary>
    [Theory]
    [InlineData(6, "at most 4 h (today's window)")]
    [InlineData(4, "at most 4 h (today's window)")]
    [InlineData(3, "at most 3 h (the shortest supported)")]
    [InlineData(null, "at most 4 h (today's window, not confirmed here)")]
    public void An_unknown_group_never_gets_more_than_today_s_window(int? hours, string expected)
    {
        var analysis = OddStudies.All["two analytes in two groups"];
        var one = analysis with
        {
            Sequences =
            [
                .. analysis.Sequences.Select(
                    (sequence, i) => i == 0 ? Windowed(sequence, hours) : Windowed(sequence, 8)
                ),
            ],
        };

        Assert.Equal($"{analysis.Sequences[0].Analyte} {expected}", UnknownGroup.Windows(one)[0]);
    }

    [Fact]
    public void Every_analyte_is_named_also_one_studied_in_a_single_group()
    {
        Assert.Single(UnknownGroup.Windows(OddStudies.All["40 pairs"]));
        Assert.Equal(2, UnknownGroup.Windows(OddStudies.All["two analytes in two groups"]).Length);
    }

    private static Sequence Windowed(Sequence sequence, int? hours) =>
        sequence with
        {
            Window = hours is { } time
                ? new SupportedWindow(
                    TimeSpan.FromHours(time),
                    sequence.Cells[0].Key.TimePoint,
                    TimeSpan.FromHours(time),
                    ManufacturerStanding.Silent
                )
                : null,
        };
}
