using StabilityStudy.Reporting.Charts;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Charts;

public class ChartMarginsTests
{
    [Fact]
    public void Frames_side_by_side_are_level_although_their_legends_differ()
    {
        var charts = SizedChart.Level([
            new SizedChart(DemoCharts.Difference().Chart, 236, 220),
            new SizedChart(DemoCharts.Regression().Chart, 236, 220),
        ]);

        var frames = charts.Select(c => ChartMargins.Of(c).Frame(c)).ToArray();

        Assert.Equal(frames[0].Top, frames[1].Top);
        Assert.Equal(frames[0].Bottom, frames[1].Bottom);
    }

    [Theory]
    [InlineData(500)]
    [InlineData(236)]
    [InlineData(150)]
    [InlineData(80)]
    public void Every_frame_has_room_whatever_the_size_asked_for(int width)
    {
        foreach (
            var chart in new[] { DemoCharts.Difference().Chart, DemoCharts.Regression().Chart }
        )
        {
            var sized = ChartMargins.WithRoom(new SizedChart(chart, width, 30));
            var margins = ChartMargins.Of(sized);
            var frame = margins.Frame(sized);
            var label = margins.YLabel.Max(ChartStyle.AxisLabel.Width);

            Assert.True(
                frame.Height >= Math.Max(35.9, label - 0.1),
                FormattableString.Invariant($"{frame.Height}")
            );
            Assert.True(frame.Width >= 0.25 * width, FormattableString.Invariant($"{frame.Width}"));
        }
    }

    [Fact]
    public void Names_of_lines_move_to_the_legend_when_they_leave_no_room()
    {
        var wide = ChartMargins.Of(new SizedChart(DemoCharts.Difference().Chart, 236, 220));
        var narrow = ChartMargins.Of(new SizedChart(DemoCharts.Difference().Chart, 90, 220));

        Assert.Equal(3, wide.EdgeNames.Length);
        Assert.Empty(narrow.EdgeNames);
        var legend = string.Concat(
            narrow.LegendRows.SelectMany(r => r).SelectMany(e => e.Lines).Select(l => l + " ")
        );
        Assert.Contains("bias +1.7 s", legend, StringComparison.Ordinal);
    }

    [Fact]
    public void Tick_labels_that_would_touch_are_left_out_but_not_their_ticks()
    {
        var axis = new Axis(
            "",
            0,
            100,
            [.. Enumerable.Range(0, 101).Select(i => new Tick(i, "label"))]
        );
        var chart = new Chart("", axis, DemoCharts.Ticked("", 0, 1, 1), []);

        var shown = ChartMargins.Of(new SizedChart(chart, 300, 100)).ShownXTicks;

        Assert.Equal(101, shown.Length);
        Assert.InRange(shown.Count(t => t.Label.Length > 0), 8, 15);
    }
}
