using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Statistics.Tests.Proportions;

public sealed class WilsonIntervalTests
{
    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/wilson.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var bounds = WilsonInterval.Bounds(
                table.Whole(row, "successes"),
                table.Whole(row, "trials"),
                table.Number(row, "level")
            );

            Close.Absolute(table.Number(row, "lower"), bounds.Lower, 1e-12);
            Close.Absolute(table.Number(row, "upper"), bounds.Upper, 1e-12);
        }
    }

    [Fact]
    public void Ends_are_exact_without_a_success_or_a_failure_and_mirror_each_other()
    {
        Assert.Equal(0, WilsonInterval.Bounds(0, 40, 0.95).Lower);
        Assert.Equal(1, WilsonInterval.Bounds(40, 40, 0.95).Upper);
        Close.Absolute(
            1 - WilsonInterval.Bounds(7, 40, 0.95).Lower,
            WilsonInterval.Bounds(33, 40, 0.95).Upper,
            1e-14
        );
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("trials", () => WilsonInterval.Bounds(0, 0, 0.95));
        Assert.Throws<ArgumentException>("successes", () => WilsonInterval.Bounds(6, 5, 0.95));
        Assert.Throws<ArgumentException>("confidenceLevel", () => WilsonInterval.Bounds(1, 5, 1));
    }
}
