using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class CusumTestTests
{
    public static TheoryData<string> CaseNames => [.. Cases];

    [Theory]
    [MemberData(nameof(CaseNames))]
    public void Statistic_agrees_with_R(string name)
    {
        var expected = Expected("computed/regression_expected.csv", name);

        var test = PassingBablok.Fit(Pairs(name), 0.95).Value!.Linearity;

        Assert.Equal((expected["cusum_above"], expected["cusum_below"]), (test.Above, test.Below));
        Close(expected["cusum"], test.Statistic, 1e-12);
    }

    [Fact]
    public void Bend_is_found()
    {
        decimal[] x = [.. Enumerable.Range(1, 40).Select(i => (decimal)i)];
        decimal[] y = [.. x.Select(v => v * v / 10)];

        var test = PassingBablok.Fit(ExactPairs.Create(x, y), 0.95).Value!.Linearity;

        Assert.True(test.DeviatesFromLinearity);
    }

    [Fact]
    public void Pairs_on_one_line_show_no_bend_although_doubles_would_leave_residuals()
    {
        decimal[] x = [.. Enumerable.Range(1, 30).Select(i => i / 10m)];
        decimal[] y = [.. x.Select(v => (1.1m * v) + 0.3m)];

        var test = PassingBablok.Fit(ExactPairs.Create(x, y), 0.95).Value!.Linearity;

        Assert.Equal(new CusumLinearity(0, 1.36, false, 0, 0), test);
    }

    /// <summary>
    /// By hand, about the slope 1: intercepts 2, 3, 0, 0, −1 with median 0, so two above and one below; along the line
    /// (by x + y) the sums are √½, √½, 2√½, 2√½, 0, the largest √2, divided by √(1 + 1).
    /// </summary>
    [Fact]
    public void Pairs_on_the_line_move_no_sum_and_those_above_and_below_are_told_apart()
    {
        var one = ExactSlope.Finite(1, 1);
        var test = CusumTest.Compute(ExactPairs.Create([1, 2, 3, 4, 5], [3, 5, 3, 4, 4]), one, one);

        Assert.Equal((2, 1), (test.Above, test.Below));
        Close(1, test.Statistic, 1e-15);
        Assert.False(test.DeviatesFromLinearity);
    }
}
