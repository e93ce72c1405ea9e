using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Model;

public class ModelRuleTests
{
    private static readonly Axis ZeroToTen = DemoCharts.Ticked("x", 0, 10, 5);

    [Fact]
    public void Row_with_too_few_cells_throws() =>
        Assert.Throws<ArgumentException>(
            "rows",
            () =>
                new Table(
                    "Caption",
                    [
                        new Column("A", ColumnAlignment.Left, 1),
                        new Column("B", ColumnAlignment.Left, 1),
                    ],
                    [new Row([new TableCell("a")])],
                    null
                )
        );

    [Fact]
    public void Table_without_columns_throws() =>
        Assert.Throws<ArgumentException>("columns", () => new Table("Caption", [], [], null));

    [Fact]
    public void Observation_outside_the_axes_throws_so_that_none_can_vanish() =>
        Assert.Throws<ArgumentException>(
            "layers",
            () =>
                new Chart(
                    "",
                    ZeroToTen,
                    ZeroToTen,
                    [new PointLayer([new(5, 10.1)], MarkerShape.Cross, null)]
                )
        );

    [Fact]
    public void Estimate_outside_the_axes_throws_but_its_interval_may_be_cut()
    {
        _ = new Chart(
            "",
            ZeroToTen,
            ZeroToTen,
            [new IntervalLayer([new(5, -3, 5, 30)], MarkerShape.Cross, null)]
        );

        Assert.Throws<ArgumentException>(
            "layers",
            () =>
                new Chart(
                    "",
                    ZeroToTen,
                    ZeroToTen,
                    [new IntervalLayer([new(5, -3, -1, 3)], MarkerShape.Cross, null)]
                )
        );
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Coordinate_that_is_no_number_throws(double value) =>
        Assert.Throws<ArgumentException>(
            "layers",
            () =>
                new Chart(
                    "",
                    ZeroToTen,
                    ZeroToTen,
                    [
                        new LineLayer(
                            [new(0, 0), new(1, value)],
                            DashStyle.Solid,
                            LineWeight.Thin,
                            null,
                            null
                        ),
                    ]
                )
        );

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(double.NaN, 1)]
    [InlineData(0, double.PositiveInfinity)]
    public void Axis_without_length_throws(double minimum, double maximum) =>
        Assert.Throws<ArgumentException>(nameof(maximum), () => new Axis("", minimum, maximum, []));

    [Fact]
    public void Tick_outside_its_axis_throws() =>
        Assert.Throws<ArgumentException>("ticks", () => new Axis("", 0, 1, [new Tick(1.5, "1.5")]));

    [Fact]
    public void One_figure_is_no_row_of_figures() =>
        Assert.Throws<ArgumentException>("charts", () => new ChartRow([DemoCharts.Difference()]));

    [Fact]
    public void Zero_of_the_verdict_shapes_is_the_safe_one() =>
        Assert.Equal(VerdictShape.Inconclusive, default(VerdictShape));
}
