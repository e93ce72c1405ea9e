using CsCheck;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class AllowableDifferenceTests
{
    private static readonly Gen<decimal> s_tenths = Gen.Int[1, 2000].Select(t => t / 10m);
    private static readonly Gen<Allowance> s_allowances = Gen.Select(
        Gen.Int[1, 60],
        Gen.Int[1, 300],
        Gen.Int[0, 2],
        (absolute, percent, kind) =>
            new Allowance(kind == 1 ? null : absolute / 10m, kind == 2 ? null : percent / 10m)
    );

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
    public void Verdicts_agree_with_decimal_arithmetic() =>
        Gen.Select(s_tenths, s_tenths, s_allowances)
            .Sample(
                (x, y, allowance) =>
                {
                    var allowed = Math.Max(
                        allowance.Absolute ?? 0,
                        (allowance.Percent ?? 0) * x / 100
                    );
                    Assert.Equal(
                        Math.Abs(y - x) <= allowed
                            ? AllowanceVerdict.Within
                            : AllowanceVerdict.Outside,
                        AllowableDifference.Judge(x, y, allowance)
                    );
                }
            );

    [Fact]
    public void Another_decimal_scale_changes_no_verdict_and_no_share() =>
        Gen.Select(Gen.Select(s_tenths, s_tenths).Array[1, 20], s_allowances, Gen.Int[0, 2])
            .Sample(
                (rows, allowance, kind) =>
                {
                    var factor = kind switch
                    {
                        0 => 10m,
                        1 => 0.1m,
                        _ => 1.000m,
                    };
                    var pairs = Pairs(rows, 1);
                    var scaled = Pairs(rows, factor);
                    var scaledAllowance = new Allowance(
                        allowance.Absolute * factor,
                        allowance.Percent
                    );
                    Assert.Equal(
                        AllowableDifference.Judge(pairs, allowance),
                        AllowableDifference.Judge(scaled, scaledAllowance)
                    );
                    Assert.Equal(
                        AllowableDifference.Shares(pairs, allowance),
                        AllowableDifference.Shares(scaled, scaledAllowance)
                    );
                }
            );

    [Fact]
    public void Verdict_and_share_agree() =>
        Gen.Select(s_tenths, s_tenths, s_allowances)
            .Sample(
                (x, y, allowance) =>
                {
                    var pairs = ExactPairs.Create([x], [y]);
                    var share = AllowableDifference.Shares(pairs, allowance)[0];
                    Close.Absolute(
                        (double)(y - x) / allowance.At((double)x),
                        share,
                        1e-12 * Math.Max(1, Math.Abs(share))
                    );
                    // A share of exactly one is the double 1, so the doubles decide as the whole numbers do.
                    Assert.Equal(
                        Math.Abs(share) <= 1 ? AllowanceVerdict.Within : AllowanceVerdict.Outside,
                        AllowableDifference.Judge(pairs, allowance)[0]
                    );
                }
            );

    [Fact]
    public void Swapped_pairs_have_the_same_verdict_against_an_amount() =>
        Gen.Select(s_tenths, s_tenths)
            .Sample(
                (x, y) =>
                    Assert.Equal(
                        AllowableDifference.Judge(x, y, new Allowance(5m, null)),
                        AllowableDifference.Judge(y, x, new Allowance(5m, null))
                    )
            );

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

    private static ExactPairs Pairs((decimal X, decimal Y)[] rows, decimal factor) =>
        ExactPairs.Create([.. rows.Select(r => r.X * factor)], [.. rows.Select(r => r.Y * factor)]);

    private static decimal Exact(string text) =>
        decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
