using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class AllowanceTests
{
    [Fact]
    public void Greater_of_both_parts_counts()
    {
        var allowance = new Allowance(2m, 10m);

        Assert.Equal(2, allowance.At(19));
        Assert.Equal(2, allowance.At(20));
        Assert.Equal(3, allowance.At(30));
    }

    [Fact]
    public void One_part_alone_counts_everywhere()
    {
        Assert.Equal(0.5, new Allowance(0.5m, null).At(1000));
        Assert.Equal(7.5, new Allowance(null, 7.5m).At(100));
    }

    [Fact]
    public void No_part_throws() =>
        Assert.Throws<ArgumentException>(() => new Allowance(null, null));

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("900000001")]
    [InlineData("0.0000000001")]
    public void A_part_out_of_range_throws(string text)
    {
        var part = decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

        Assert.Throws<ArgumentException>("Absolute", () => new Allowance(part, null));
        Assert.Throws<ArgumentException>("Percent", () => new Allowance(1m, part));
    }

    [Fact]
    public void Trailing_zeros_make_no_other_allowance() =>
        Assert.Equal(new Allowance(2.5m, 10m), new Allowance(2.50m, 10.0m));

    [Fact]
    public void A_first_member_that_is_no_number_throws() =>
        Assert.Throws<ArgumentException>("x", () => new Allowance(1m, null).At(double.NaN));

    [Fact]
    public void The_verdict_that_stands_for_nothing_is_outside() =>
        Assert.Equal(AllowanceVerdict.Outside, default);
}
