using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class ToleranceIntervalTests
{
    [Fact]
    public void Whole_numbers_reach_the_published_factor_times_their_deviation_from_their_mean()
    {
        // 1 … n: mean (n + 1)/2 and variance n(n + 1)/12.
        var table = ReferenceTable.Read("published/tolerance_factors_normal.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var n = table.Whole(row, "n");
            var found = Computed.Value(
                ToleranceInterval.Compute(
                    UpTo(n),
                    table.Number(row, "coverage"),
                    table.Number(row, "confidence")
                )
            );

            var deviation = Math.Sqrt(n * (n + 1.0) / 12);
            var reach = table.Number(row, "k2_exact") * deviation;
            Assert.Equal((n, (n + 1) / 2.0), (found.Count, found.Mean));
            Close.Relative(deviation, found.StandardDeviation, 1e-14);
            Close.Absolute(((n + 1) / 2.0) - reach, found.Lower, 6e-7 * deviation);
            Close.Absolute(((n + 1) / 2.0) + reach, found.Upper, 6e-7 * deviation);
        }
    }

    [Fact]
    public void Two_values_are_enough_and_ten_thousand_not_too_many()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, ToleranceInterval.Compute([1], 0.9, 0.95));
        Assert.Equal(2, Computed.Value(ToleranceInterval.Compute([1, 2], 0.9, 0.95)).Count);

        var most = Computed.Value(ToleranceInterval.Compute(UpTo(10_000), 0.9, 0.95));
        Close.Relative(
            Normal.Quantile(0.95) * most.StandardDeviation,
            most.Upper - most.Mean,
            0.02
        );
        Computed.Refusal(
            AssumptionCode.TooManyValues,
            ToleranceInterval.Compute(UpTo(10_001), 0.9, 0.95)
        );
    }

    [Fact]
    public void Values_all_the_same_have_no_interval() =>
        Computed.Refusal(
            AssumptionCode.ZeroSpread,
            ToleranceInterval.Compute([3, 3, 3], 0.9, 0.95)
        );

    [Fact]
    public void Wrong_arguments_are_the_callers_mistake_even_without_values()
    {
        Assert.Throws<ArgumentException>(
            "values",
            () => ToleranceInterval.Compute([double.NaN], 0.9, 0.95)
        );
        Assert.Throws<ArgumentException>("coverage", () => ToleranceInterval.Compute([], 1, 0.95));
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => ToleranceInterval.Compute([], 0.9, 0)
        );
    }

    private static double[] UpTo(int n) => [.. Enumerable.Range(1, n).Select(i => (double)i)];
}
