using CsCheck;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class PassingBablokPropertyTests
{
    /// <summary>Few distinct values in tenths: heavy ties, equal pairs, vertical slopes and slopes of −1 are common.</summary>
    private static readonly Gen<(decimal X, decimal Y)[]> Tied = Gen.Select(
            Gen.Int[10, 22],
            Gen.Int[-3, 3]
        )
        .Select((x, error) => (x / 10m, (x + error) / 10m))
        .Array[8, 16];

    [Fact]
    public void Agrees_with_ranks_counted_naively_in_decimal_fractions()
    {
        var computed = 0;
        Tied.Sample(
            pairs =>
            {
                var answer = PassingBablok.Fit(Create(pairs), 0.95);
                if (answer.TryGet(out var fit))
                {
                    var (slope, lower, upper, count, below) = Naive(pairs);
                    Assert.Equal((count, below), (fit.SlopeCount, fit.SlopesBelowMinusOne));
                    Close(slope, fit.Slope, 1e-15);
                    Close(lower, fit.SlopeLower, 1e-15);
                    Close(upper, fit.SlopeUpper, 1e-15);
                    Interlocked.Increment(ref computed);
                }
                else if (answer.NotComputable is { Code: AssumptionCode.InfiniteSlope })
                {
                    Assert.Equal(double.PositiveInfinity, Naive(pairs).Upper);
                }
            },
            iter: 1000
        );
        Assert.True(computed > 300);
    }

    [Fact]
    public void Powers_of_ten_and_trailing_zeros_change_no_count_and_no_slope() =>
        Tied.Sample(
            pairs =>
            {
                var plain = PassingBablok.Fit(Create(pairs), 0.95);
                foreach (var factor in new[] { 10m, 0.1m, 1.00m })
                {
                    var other = PassingBablok.Fit(
                        Create([.. pairs.Select(p => (p.X * factor, p.Y * factor))]),
                        0.95
                    );
                    Assert.Equal(WithoutIntercept(plain), WithoutIntercept(other));
                    Assert.Equal(plain.Notes, other.Notes);
                    Assert.Equal(Ranked(plain.Value), Ranked(other.Value));
                    Close(
                        (plain.Value?.Intercept ?? 0) * (double)factor,
                        other.Value?.Intercept ?? 0,
                        1e-12
                    );
                }
            },
            iter: 300
        );

    private static NotComputable? WithoutIntercept(Estimate<PassingBablokFit> estimate) =>
        estimate.NotComputable is { Point: { } point } why
            ? why with
            {
                Point = point with { Intercept = null },
            }
            : estimate.NotComputable;

    [Fact]
    public void Numbers_that_need_products_of_128_bits_rank_like_small_ones() =>
        Tied.Sample(
            pairs =>
            {
                const decimal factor = 12345678.12345678m;
                var plain = PassingBablok.Fit(Create(pairs), 0.95).Value;
                var wide = PassingBablok
                    .Fit(Create([.. pairs.Select(p => (p.X * factor, p.Y * factor))]), 0.95)
                    .Value;
                Assert.Equal(
                    (plain?.SlopeCount, plain?.SlopesBelowMinusOne),
                    (wide?.SlopeCount, wide?.SlopesBelowMinusOne)
                );
                Close(plain?.Slope ?? 0, wide?.Slope ?? 0, 1e-14);
                Close(plain?.SlopeLower ?? 0, wide?.SlopeLower ?? 0, 1e-14);
                Close(plain?.SlopeUpper ?? 0, wide?.SlopeUpper ?? 0, 1e-14);
            },
            iter: 300
        );

    [Fact]
    public void Swapping_x_and_y_inverts_the_slope_and_its_bounds() =>
        Tied.Sample(
            pairs =>
            {
                var forward = PassingBablok.Fit(Create(pairs), 0.95).Value;
                var backward = PassingBablok
                    .Fit(Create([.. pairs.Select(p => (p.Y, p.X))]), 0.95)
                    .Value;
                if (forward is null || backward is null)
                {
                    return;
                }

                Assert.Equal(forward.SlopeCount, backward.SlopeCount);
                Close(1, forward.SlopeLower * backward.SlopeUpper, 1e-14);
                Close(1, forward.SlopeUpper * backward.SlopeLower, 1e-14);
                if (forward.SlopeCount % 2 == 1)
                {
                    Close(1, forward.Slope * backward.Slope, 1e-14);
                }
            },
            iter: 500
        );

    [Fact]
    public void Order_of_the_pairs_changes_nothing() =>
        Tied.Sample(
            pairs =>
            {
                var plain = Create(pairs);
                var reversed = Create([.. pairs.Reverse()]);
                Assert.Equal(
                    PassingBablok.Fit(plain, 0.95).Value,
                    PassingBablok.Fit(reversed, 0.95).Value
                );
                Assert.Equal(
                    PassingBablok.Fit(plain, 0.95).Value?.Linearity,
                    PassingBablok.Fit(reversed, 0.95).Value?.Linearity
                );
            },
            iter: 300
        );

    [Fact]
    public void Shift_of_y_shifts_the_intercept_only() =>
        Tied.Sample(
            pairs =>
            {
                var plain = PassingBablok.Fit(Create(pairs), 0.95).Value;
                var shifted = PassingBablok
                    .Fit(Create([.. pairs.Select(p => (p.X, p.Y + 7.3m))]), 0.95)
                    .Value;
                Assert.Equal(Ranked(plain), Ranked(shifted));
                Close(plain?.Intercept + 7.3 ?? 0, shifted?.Intercept ?? 0, 1e-12);
            },
            iter: 300
        );

    private static ExactPairs Create((decimal X, decimal Y)[] pairs) =>
        ExactPairs.Create([.. pairs.Select(p => p.X)], [.. pairs.Select(p => p.Y)]);

    private static (long, long, double, double, double)? Ranked(PassingBablokFit? fit) =>
        fit is null
            ? null
            : (fit.SlopeCount, fit.SlopesBelowMinusOne, fit.Slope, fit.SlopeLower, fit.SlopeUpper);

    /// <summary>Picks the slope of a rank by counting, for each slope, how many are less and how many are equal.</summary>
    private static (double Slope, double Lower, double Upper, int Count, int Below) Naive(
        (decimal X, decimal Y)[] pairs
    )
    {
        var slopes = new List<(decimal Rise, decimal Run)>();
        for (var i = 0; i < pairs.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var rise = pairs[i].Y - pairs[j].Y;
                var run = pairs[i].X - pairs[j].X;
                if (rise + run != 0 && run != 0)
                {
                    slopes.Add(run > 0 ? (rise, run) : (-rise, -run));
                }
                else if (run == 0 && rise != 0)
                {
                    slopes.Add((1, 0));
                }
            }
        }

        var below = slopes.Count(s => s.Run > 0 && s.Rise < -s.Run);
        var n = slopes.Count;
        double twos = pairs.Length * (pairs.Length - 1);
        var width = Normal.Quantile(0.975) * Math.Sqrt(twos * ((2 * pairs.Length) + 5) / 18);
        var m1 = (int)Math.Floor(((n - width) / 2) + 0.5);
        return (
            n % 2 == 1
                ? AtRank(((n + 1) / 2) + below)
                : (AtRank((n / 2) + below) + AtRank((n / 2) + 1 + below)) / 2,
            AtRank(m1 + below),
            AtRank(n - m1 + 1 + below),
            n,
            below
        );

        double AtRank(int rank)
        {
            foreach (var (rise, run) in slopes)
            {
                var less = slopes.Count(s => s.Rise * run < rise * s.Run);
                var equal = slopes.Count(s => s.Rise * run == rise * s.Run);
                if (less < rank && rank <= less + equal)
                {
                    return run == 0 ? double.PositiveInfinity : (double)rise / (double)run;
                }
            }

            return double.PositiveInfinity;
        }
    }
}
