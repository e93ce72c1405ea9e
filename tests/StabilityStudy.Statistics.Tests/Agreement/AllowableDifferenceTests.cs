using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class AllowableDifferenceTests
{
    [Theory]
    [InlineData("0.1", "0.3", "0.2")]
    [InlineData("0.3", "0.1", "0.2")]
    [InlineData("1.1", "1.2", "0.1")]
    [InlineData("30.1", "30.8", "0.7")]
    public void A_difference_on_the_amount_is_within(string x, string y, string absolute)
    {
        var allowance = new Allowance(Exact(absolute), null);

        Assert.Equal(
            AllowanceVerdict.Within,
            AllowableDifference.Judge(Exact(x), Exact(y), allowance)
        );
        Assert.Equal(
            AllowanceVerdict.Outside,
            AllowableDifference.Judge(
                Exact(x),
                Exact(y) + (Exact(y) > Exact(x) ? 0.000000001m : -0.000000001m),
                allowance
            )
        );
    }

    [Theory]
    [InlineData("28.0", "32.2", "15")]
    [InlineData("32.0", "29.6", "7.5")]
    [InlineData("0.9", "0.99", "10")]
    public void A_difference_on_the_percentage_is_within(string x, string y, string percent)
    {
        var allowance = new Allowance(null, Exact(percent));

        Assert.Equal(
            AllowanceVerdict.Within,
            AllowableDifference.Judge(Exact(x), Exact(y), allowance)
        );
        Assert.Equal(
            AllowanceVerdict.Outside,
            AllowableDifference.Judge(
                Exact(x),
                Exact(y) + (Exact(y) > Exact(x) ? 0.000000001m : -0.000000001m),
                allowance
            )
        );
    }

    [Fact]
    public void Order_of_the_pairs_is_kept()
    {
        var pairs = ExactPairs.Create([10m, 10m, 10m], [11m, 13m, 9m]);
        var allowance = new Allowance(2m, null);

        Assert.Equal(
            [AllowanceVerdict.Within, AllowanceVerdict.Outside, AllowanceVerdict.Within],
            AllowableDifference.Judge(pairs, allowance)
        );
        Assert.Equal([0.5, 1.5, -0.5], AllowableDifference.Shares(pairs, allowance));
    }

    [Fact]
    public void Largest_values_with_most_decimals_do_not_overflow()
    {
        var allowance = new Allowance(900_000_000m, 900_000_000m);

        Assert.Equal(
            AllowanceVerdict.Within,
            AllowableDifference.Judge(899_999_999.999999999m, -0.000000001m, allowance)
        );
        Assert.Equal(
            AllowanceVerdict.Outside,
            AllowableDifference.Judge(
                -900_000_000m,
                899_999_999.999999999m,
                new Allowance(0.000000001m, 0.000000001m)
            )
        );
    }

    [Fact]
    public void A_percentage_of_zero_or_less_allows_nothing_but_no_difference()
    {
        var percent = new Allowance(null, 10m);

        Assert.Equal(AllowanceVerdict.Within, AllowableDifference.Judge(0m, 0m, percent));
        Assert.Equal(AllowanceVerdict.Outside, AllowableDifference.Judge(0m, 0.1m, percent));
        Assert.Equal(AllowanceVerdict.Outside, AllowableDifference.Judge(-5m, -5m, percent));
        Assert.Equal(
            AllowanceVerdict.Within,
            AllowableDifference.Judge(-5m, -4m, new Allowance(1m, 10m))
        );
        Assert.Throws<ArgumentException>(() =>
            AllowableDifference.Shares(ExactPairs.Create([0m], [1m]), percent)
        );
    }

    [Fact]
    public void No_pairs_have_no_verdicts()
    {
        var none = ExactPairs.Create([], []);

        Assert.Empty(AllowableDifference.Judge(none, new Allowance(1m, null)));
        Assert.Empty(AllowableDifference.Shares(none, new Allowance(1m, null)));
    }

    private static decimal Exact(string text) =>
        decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Fractions of whole numbers of any length, for results small enough for 64 bits and results that are not, on the limit and one step beside it.</summary>
    [Theory]
    [InlineData(1, 100)]
    [InlineData(9, 40)]
    [InlineData(9, 600_000_000)]
    public void Verdicts_and_shares_are_those_of_exact_fractions(int decimals, int largest)
    {
        var random = new SeededRandom(11);
        var step = 1m;
        for (var i = 0; i < decimals; i++)
        {
            step /= 10;
        }

        Allowance[] allowances = [new(null, 10), new(2, null), new(0.5m, 7.25m), new(1e-9m, 33)];
        for (var run = 0; run < 500; run++)
        {
            var allowance = allowances[run % allowances.Length];
            var x = decimal.Round((decimal)random.NextDouble() * largest, decimals) + step;
            var allowed = Math.Max(allowance.Absolute ?? 0, (allowance.Percent ?? 0) * x / 100);
            var y = decimal.Round(x + (run % 3 == 0 ? -allowed : allowed), decimals);
            foreach (var value in new[] { y - step, y, y + step })
            {
                var pairs = ExactPairs.Create([x], [value]);

                Assert.Equal(
                    Math.Abs(value - x) <= allowed
                        ? AllowanceVerdict.Within
                        : AllowanceVerdict.Outside,
                    AllowableDifference.Judge(pairs, allowance)[0]
                );
                Close.Relative(
                    (double)((value - x) / allowed),
                    AllowableDifference.Shares(pairs, allowance)[0],
                    1e-15
                );
            }
        }
    }
}
