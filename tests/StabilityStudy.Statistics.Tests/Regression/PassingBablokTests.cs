using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class PassingBablokTests
{
    public static TheoryData<string> CaseNames => [.. Cases];

    [Theory]
    [MemberData(nameof(CaseNames))]
    public void Line_agrees_with_R(string name)
    {
        var expected = Expected("computed/regression_expected.csv", name);

        var fit = PassingBablok.Fit(Pairs(name), 0.95).Value!;

        Assert.Equal(expected["pb_n"], fit.SlopeCount);
        Assert.Equal(expected["pb_k"], fit.SlopesBelowMinusOne);
        Close(expected["pb_slope"], fit.Slope, 1e-14);
        Close(expected["pb_slope_lower"], fit.SlopeLower, 1e-14);
        Close(expected["pb_slope_upper"], fit.SlopeUpper, 1e-14);
        Close(expected["pb_intercept"], fit.Intercept, 1e-12);
        Close(expected["pb_intercept_lower"], fit.InterceptLower, 1e-12);
        Close(expected["pb_intercept_upper"], fit.InterceptUpper, 1e-12);
    }

    [Fact]
    public void Sen_1968_by_hand()
    {
        var pairs = ExactPairs.Create([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]);

        var fit = PassingBablok.Fit(pairs, 0.95).Value!;

        Assert.Equal(
            (21, 0, 4.0, 26.0 / 7, 35.0 / 8, 6.0),
            (
                fit.SlopeCount,
                fit.SlopesBelowMinusOne,
                fit.Slope,
                fit.SlopeLower,
                fit.SlopeUpper,
                fit.Intercept
            )
        );
    }

    [Fact]
    public void Published_file_of_Sen_1968_is_the_case_checked_by_hand()
    {
        Assert.Equal([1, 2, 3, 4, 10, 12, 18], Column("published/sen1968_theil_sen.csv", 0));
        Assert.Equal([9, 15, 19, 20, 45, 55, 78], Column("published/sen1968_theil_sen.csv", 1));
    }

    [Fact]
    public void Slope_of_exactly_minus_one_is_left_out_although_doubles_miss_it()
    {
        // 0.3 − 0.1 is not 0.2 in doubles: the slope between the first two pairs would not be −1.
        var pairs = ExactPairs.Create(
            [0.1m, 0.3m, 1.1m, 2.2m, 3.1m, 4.3m, 5.2m],
            [0.7m, 0.5m, 1.2m, 2.1m, 3.3m, 4.1m, 5.4m]
        );

        var fit = PassingBablok.Fit(pairs, 0.95).Value!;

        Assert.NotEqual(-1, (0.5 - 0.7) / (0.3 - 0.1));
        Assert.Equal(20, fit.SlopeCount);
        Assert.Equal(0, fit.SlopesBelowMinusOne);
    }

    [Fact]
    public void Steep_falls_and_vertical_slopes_count_and_equal_pairs_do_not()
    {
        var pairs = ExactPairs.Create(
            [1, 1, 1, 2, 3, 4, 5, 6, 7, 8],
            [1, 1, 3, 2, 3.5m, 4, 5.5m, 6, 7.5m, 8]
        );

        var fit = PassingBablok.Fit(pairs, 0.95).Value!;

        // 45 twos: one is 0/0 and one, from (1, 3) to (2, 2), has slope −1.
        Assert.Equal(43, fit.SlopeCount);
        Assert.Equal(0, fit.SlopesBelowMinusOne);
    }

    [Fact]
    public void Slope_below_minus_one_shifts_the_ranks()
    {
        var pairs = ExactPairs.Create(
            [1, 1.5m, 2, 3, 4, 5, 6, 7, 8],
            [2, 1, 2.5m, 3.1m, 4.2m, 5.1m, 6.3m, 7.1m, 8.2m]
        );

        var fit = PassingBablok.Fit(pairs, 0.95).Value!;

        Assert.Equal(1, fit.SlopesBelowMinusOne);
        Assert.Equal(36, fit.SlopeCount);
    }

    [Fact]
    public void Falling_or_unrelated_pairs_are_refused()
    {
        var falling = ExactPairs.Create([1, 2, 3, 4, 5, 6], [6, 5, 4, 3, 2, 1]);
        var unrelated = ExactPairs.Create([1, 2, 3, 4, 5, 6], [3, 1, 4, 1, 5, 2]);

        Assert.Equal(
            AssumptionCode.NoPositiveAssociation,
            PassingBablok.Fit(falling, 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.NoPositiveAssociation,
            PassingBablok.Fit(unrelated, 0.95).NotComputable?.Code
        );
    }

    [Theory]
    [InlineData(0, AssumptionCode.TooFewValues)]
    [InlineData(1, AssumptionCode.TooFewValues)]
    [InlineData(2, AssumptionCode.TooFewValues)]
    [InlineData(3, AssumptionCode.NoIntervalAtThisSize)]
    [InlineData(4, AssumptionCode.NoIntervalAtThisSize)]
    [InlineData(5, null)]
    [InlineData(20_001, null)]
    public void Number_of_pairs_decides_whether_there_is_an_interval(int count, string? code)
    {
        decimal[] values = [.. Enumerable.Range(1, count).Select(i => (decimal)i)];

        var answer = PassingBablok.Fit(ExactPairs.Create(values, values), 0.95);

        Assert.Equal(code, answer.NotComputable?.Code);
    }

    [Fact]
    public void Constant_x_or_y_is_refused()
    {
        var constantX = ExactPairs.Create([2, 2, 2, 2, 2], [1, 2, 3, 4, 5]);
        var constantY = ExactPairs.Create([1, 2, 3, 4, 5], [2, 2, 2, 2, 2]);

        Assert.Equal(
            AssumptionCode.ConstantBaseline,
            PassingBablok.Fit(constantX, 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.ZeroSpread,
            PassingBablok.Fit(constantY, 0.95).NotComputable?.Code
        );
    }

    [Fact]
    public void Vertical_bound_is_refused()
    {
        var pairs = ExactPairs.Create([1, 1, 1, 1, 2, 2, 2, 2], [1, 2, 3, 4, 5, 6, 7, 8]);

        var answer = PassingBablok.Fit(pairs, 0.95);

        Assert.Equal(AssumptionCode.InfiniteSlope, answer.NotComputable?.Code);
        // Sixteen finite slopes from 1 to 7, twelve vertical above them: the middle of 28 are the 14th and 15th, 6 and 6.
        Assert.Equal(new PointEstimate(6, -4.5), answer.NotComputable!.Point);
    }

    [Fact]
    public void Identical_results_give_an_interval_of_one_to_one_with_a_note()
    {
        decimal[] values = [1.0m, 1.1m, 1.1m, 1.2m, 1.3m, 1.5m, 1.5m, 1.8m];

        var answer = PassingBablok.Fit(ExactPairs.Create(values, values), 0.95);

        Assert.Equal((1.0, 1.0), (answer.Value!.SlopeLower, answer.Value.SlopeUpper));
        Assert.Equal(EstimateNote.HeavyTies, Assert.Single(answer.Notes));
    }

    [Fact]
    public void Distinct_results_give_no_note() =>
        Assert.Empty(PassingBablok.Fit(Pairs("wide"), 0.95).Notes);

    [Fact]
    public void Largest_allowed_numbers_do_not_overflow()
    {
        const decimal large = 900_000_000m;
        var pairs = ExactPairs.Create(
            [-large, -1.000000001m, 0, 1.000000001m, 2.5m, large],
            [-large, -1.000000001m, 0, 1.000000001m, 2.5m, large]
        );

        Assert.Equal(1, PassingBablok.Fit(pairs, 0.95).Value!.Slope);
    }

    /// <summary>Of 28 twos 8 are tied in x or y, more than a quarter, or 7, which is not more.</summary>
    [Theory]
    [InlineData("10 10 10 10 20 20 30 40", "11 12 13 14 21 23 31 42", false)]
    [InlineData("10 10 10 10 20 20 30 30", "11 12 13 14 21 23 31 34", true)]
    [InlineData("11 12 13 14 21 23 31 34", "10 10 10 10 20 20 30 30", true)]
    public void Many_equal_results_are_said_in_a_note(string x, string y, bool isSaid)
    {
        var fit = PassingBablok.Fit(ExactPairs.Create(Numbers(x), Numbers(y)), 0.5);

        Assert.NotNull(fit.Value);
        Assert.Equal(isSaid, fit.Notes.Contains(EstimateNote.HeavyTies));

        static decimal[] Numbers(string text) =>
            [
                .. text.Split(' ')
                    .Select(number =>
                        decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture)
                    ),
            ];
    }
}
