using CsCheck;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class AllowableDifferencePropertyTests
{
    private static readonly Gen<decimal> s_tenths = Gen.Int[1, 2000].Select(t => t / 10m);
    private static readonly Gen<Allowance> s_allowances = Gen.Select(
        Gen.Int[1, 60],
        Gen.Int[1, 300],
        Gen.Int[0, 2],
        (absolute, percent, kind) =>
            new Allowance(kind == 1 ? null : absolute / 10m, kind == 2 ? null : percent / 10m)
    );

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

    private static ExactPairs Pairs((decimal X, decimal Y)[] rows, decimal factor) =>
        ExactPairs.Create([.. rows.Select(r => r.X * factor)], [.. rows.Select(r => r.Y * factor)]);
}
