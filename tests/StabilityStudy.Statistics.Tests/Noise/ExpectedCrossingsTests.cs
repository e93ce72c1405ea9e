using StabilityStudy.Statistics.Noise;

namespace StabilityStudy.Statistics.Tests.Noise;

public sealed class ExpectedCrossingsTests
{
    [Fact]
    public void Probabilities_of_the_single_specimens_add_up() =>
        // One, two and no standard deviations away: Φ(−1) + Φ(−2) + Φ(0), printed in every table of the normal distribution.
        Close.Relative(
            0.15865525393145705 + 0.022750131948179195 + 0.5,
            ExpectedCrossings.Number([40, 41.0 / 1.05, 41], [41], 2.5),
            1e-12
        );

    [Fact]
    public void Noise_grows_with_the_level_of_the_specimen() =>
        Close.Relative(
            0.022750131948179195 + 0.15865525393145705,
            // 5 % of 50 is 2.5 and lies twice in 5; 5 % of 80 is 4 and lies once in 4.
            ExpectedCrossings.Number([50], [55], 5) + ExpectedCrossings.Number([80], [76], 5),
            1e-12
        );

    [Fact]
    public void A_value_on_the_level_counts_one_half() =>
        Assert.Equal(0.5, ExpectedCrossings.Number([35], [35], 3));

    [Fact]
    public void Without_noise_specimens_or_above_zero_values_none_is_expected()
    {
        Assert.Equal(0, ExpectedCrossings.Number([35, 36], [35], 0));
        Assert.Equal(0, ExpectedCrossings.Number([], [35], 3));
        Assert.Equal(0, ExpectedCrossings.Number([0], [0], 3));
    }

    [Fact]
    public void The_number_agrees_with_drawn_second_results()
    {
        var random = new Random(20240811);
        double[] baselines = [30, 33, 34, 34.5, 35, 35.5, 36, 37, 40];
        const int studies = 20_000;
        long crossed = 0;
        for (var i = 0; i < studies; i++)
        {
            foreach (var x in baselines)
            {
                var z =
                    Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
                    * Math.Cos(2 * Math.PI * random.NextDouble());
                var second = x * (1 + (0.04 * z));
                crossed += (x < 35.2 && second > 35.2) || (x > 35.2 && second < 35.2) ? 1 : 0;
            }
        }

        // Variance below the expectation of about 2.7 a study; four standard errors.
        Close.Absolute(
            (double)crossed / studies,
            ExpectedCrossings.Number(baselines, [35.2], 4),
            4 * Math.Sqrt(3.0 / studies)
        );
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "noisePercent",
            () => ExpectedCrossings.Number([1], [1], -1)
        );
        Assert.Throws<ArgumentException>(
            "levels",
            () => ExpectedCrossings.Number([1], [double.NaN], 1)
        );
        Assert.Throws<ArgumentException>(
            "baselines",
            () => ExpectedCrossings.Number([double.NaN], [1], 1)
        );
    }

    [Fact]
    public void A_baseline_at_a_level_goes_below_it_every_other_time_and_noise_is_a_number()
    {
        Assert.Equal(0.5, ExpectedCrossings.Number([100], [100], 3), 1e-12);
        Assert.Throws<ArgumentException>(() => ExpectedCrossings.Number([100], [100], double.NaN));
    }
}
