using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Report.Wording;
using Xunit;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData(94.97, 95, 1, "94.97")]
    [InlineData(95.03, 95, 1, "95.03")]
    [InlineData(95, 95, 1, "95.0")]
    [InlineData(94.9, 95, 1, "94.9")]
    [InlineData(7.4996, 7.5, 2, "7.4996")]
    [InlineData(-7.4996, -7.5, 2, "\u22127.4996")]
    [InlineData(85.04, 85.1, 1, "85.0")]
    public void A_number_beside_a_limit_never_rounds_across_it(
        double value,
        double limit,
        int decimals,
        string expected
    ) => Assert.Equal(expected, NumberText.AgainstLimit(value, limit, decimals));

    [Fact]
    public void A_number_equal_to_the_limit_but_for_the_last_bits_gets_no_more_decimals() =>
        Assert.Equal("58.0", NumberText.AgainstLimit(58, 100 * 0.58, 1));

    [Fact]
    public void An_interval_keeps_each_end_on_its_side_of_both_limits() =>
        Assert.Equal(
            "\u22127.504 to +7.4996",
            NumberText.IntervalAgainstLimits(-7.504, 7.4996, -7.5, 7.5, 2)
        );

    [Theory]
    [InlineData("12.0", "12.0")]
    [InlineData("-0.50", "−0.50")]
    [InlineData("31.33333333333333", "31.333333333333")]
    public void A_result_keeps_the_decimals_it_was_reported_with(string value, string expected) =>
        Assert.Equal(
            expected,
            NumberText.AsReported(
                decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture)
            )
        );

    [Theory]
    [InlineData(7.84, "7.8 h")]
    [InlineData(71.9, "71.9 h")]
    [InlineData(257.1, "10.7 d")]
    public void Long_times_are_in_days(double hours, string expected) =>
        Assert.Equal(expected, DurationText.FormatComputed(hours));
}
