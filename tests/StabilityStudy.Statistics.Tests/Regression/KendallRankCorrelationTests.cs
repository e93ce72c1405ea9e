using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class KendallRankCorrelationTests
{
    public static TheoryData<string> CaseNames => [.. Cases];

    [Theory]
    [MemberData(nameof(CaseNames))]
    public void Coefficient_and_interval_agree_with_R(string name)
    {
        var expected = Expected("computed/regression_expected.csv", name);

        var tau = KendallRankCorrelation.Compute(Pairs(name), 0.95).Value!;

        Close(expected["kendall"], tau.TauB, 1e-13);
        Close(expected["kendall_se"], tau.StandardError, 1e-7);
        Close(expected["kendall_lower"], tau.Lower, 1e-7);
        Close(expected["kendall_upper"], tau.Upper, 1e-7);
    }

    [Fact]
    public void Counts_of_small_cases_with_many_ties_are_those_of_all_twos()
    {
        var random = new SeededRandom(5);
        for (var run = 0; run < 500; run++)
        {
            var n = 3 + (run % 12);
            decimal[] x =
            [
                .. Enumerable.Range(0, n).Select(_ => (decimal)(int)(4 * random.NextDouble())),
            ];
            decimal[] y =
            [
                .. Enumerable.Range(0, n).Select(_ => (decimal)(int)(3 * random.NextDouble())),
            ];
            if (!KendallRankCorrelation.Compute(ExactPairs.Create(x, y), 0.95).TryGet(out var tau))
            {
                continue;
            }

            var twos = (
                from i in Enumerable.Range(0, n)
                from j in Enumerable.Range(i + 1, n - i - 1)
                select (X: x[j].CompareTo(x[i]), Y: y[j].CompareTo(y[i]))
            ).ToArray();
            Assert.Equal(twos.Count(two => two.X * two.Y > 0), tau.Concordant);
            Assert.Equal(twos.Count(two => two.X * two.Y < 0), tau.Discordant);
            Assert.Equal(twos.Count(two => two.X == 0), tau.TiedInX);
            Assert.Equal(twos.Count(two => two.Y == 0), tau.TiedInY);
        }
    }

    [Fact]
    public void Twos_are_counted_by_kind()
    {
        var pairs = ExactPairs.Create([1, 2, 2, 3], [1, 1, 2, 0]);

        var tau = KendallRankCorrelation.Compute(pairs, 0.95).Value!;

        Assert.Equal((1L, 3L, 1L, 1L), (tau.Concordant, tau.Discordant, tau.TiedInX, tau.TiedInY));
        Close(-2.0 / 5, tau.TauB, 1e-15);
    }

    [Fact]
    public void Perfect_order_has_no_width()
    {
        var tau = KendallRankCorrelation
            .Compute(ExactPairs.Create([1, 2, 3, 4], [2, 3, 5, 8]), 0.95)
            .Value!;

        Assert.Equal((1.0, 0.0, 1.0), (tau.TauB, tau.StandardError, tau.Lower));
    }

    [Fact]
    public void Two_pairs_are_too_few() =>
        Assert.Equal(
            AssumptionCode.TooFewValues,
            KendallRankCorrelation
                .Compute(ExactPairs.Create([1, 2], [1, 2]), 0.95)
                .NotComputable?.Code
        );

    [Fact]
    public void Reversed_second_members_turn_the_sign()
    {
        var pairs = Pairs("tied");
        var turned = ExactPairs.Create(
            [.. pairs.ScaledX.Select(v => (decimal)v)],
            [.. pairs.ScaledY.Select(v => (decimal)-v)]
        );

        var tau = KendallRankCorrelation.Compute(pairs, 0.9).Value!;
        var opposite = KendallRankCorrelation.Compute(turned, 0.9).Value!;

        Close(-tau.TauB, opposite.TauB, 1e-14);
        Close(-tau.Upper, opposite.Lower, 1e-12);
    }
}
