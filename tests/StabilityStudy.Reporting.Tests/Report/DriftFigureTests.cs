using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Drift;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class DriftFigureTests
{
    [Fact]
    public void The_whiskers_are_the_deciding_interval_and_are_called_so()
    {
        var analysis = OddStudies.All["40 pairs"];
        var bias = analysis
            .Sequences[0]
            .Cells[0]
            .Criteria.OfType<Core.Criteria.Bias.BiasResult>()
            .Single();
        var layer = Assert.Single(Chart(analysis).Layers.OfType<IntervalLayer>());

        Assert.Equal("mean, 90 % deciding interval", layer.Legend);
        Assert.Equal(bias.Mean.Value!.Lower, layer.Intervals[0].Lower);
        Assert.Equal(bias.Mean.Value!.Upper, layer.Intervals[0].Upper);
    }

    [Fact]
    public void No_two_lines_of_the_legend_look_alike()
    {
        var looks = Chart(OddStudies.All["40 pairs"])
            .Layers.Select(layer =>
                layer switch
                {
                    LineLayer { Legend: not null } line => (line.Dash, line.Weight),
                    ReferenceLine line when (line.Legend ?? line.Label) is not null => (
                        line.Dash,
                        line.Weight
                    ),
                    _ => ((DashStyle, LineWeight)?)null,
                }
            )
            .OfType<(DashStyle, LineWeight)>()
            .ToArray();

        Assert.True(looks.Length >= 4);
        Assert.Equal(looks.Length, looks.Distinct().Count());
    }

    [Fact]
    public void An_outlier_beyond_the_frame_is_marked_at_its_edge_with_its_change()
    {
        var analysis = FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell =>
                cell with
                {
                    Pairs = cell.Pairs.SetItem(
                        0,
                        cell.Pairs[0] with
                        {
                            IsOutlier = true,
                            Baseline = cell.Pairs[0].Baseline! with
                            {
                                Result = new MeasuredResult("30", 30m),
                            },
                            Delayed = cell.Pairs[0].Delayed! with
                            {
                                Result = new MeasuredResult("60", 60m),
                            },
                        }
                    ),
                }
        );
        var chart = Chart(analysis);
        var point = Assert.Single(Assert.Single(chart.Layers.OfType<PointLayer>()).Points);

        Assert.Equal("S001: +100 %", point.Label);
        Assert.True(chart.Y.Holds(point.Y));
    }

    private static Chart Chart(Core.Analysis.StudyAnalysis analysis) =>
        DriftSection.Charts(analysis).Single().Chart;
}
