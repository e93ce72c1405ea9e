using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Resampling;

public sealed class SeededRandomTests
{
    [Fact]
    public void Outputs_agree_with_an_independent_writing_of_the_algorithm()
    {
        var table = ReferenceTable.Read("computed/splitmix64.csv");
        var random = new SeededRandom(0);
        for (var row = 0; row < table.Count; row++)
        {
            if (table.Whole(row, "index") == 0)
            {
                random = new SeededRandom(Whole(table.Text(row, "seed")));
            }

            Assert.Equal(Whole(table.Text(row, "output")), random.NextUInt64());
        }
    }

    [Fact]
    public void A_uniform_number_is_the_middle_of_its_step_of_two_to_the_minus_52()
    {
        var bits = new SeededRandom(7);
        var numbers = new SeededRandom(7);
        for (var i = 0; i < 100; i++)
        {
            var steps = numbers.NextDouble() * (1L << 52);

            Assert.Equal(bits.NextUInt64() / 4096, steps - 0.5, 0.0);
        }
    }

    [Fact]
    public void Same_seed_gives_the_same_numbers()
    {
        var first = new SeededRandom(42);
        var second = new SeededRandom(42);

        for (var i = 0; i < 100; i++)
        {
            Assert.Equal(first.NextNormal(), second.NextNormal());
        }
    }

    [Fact]
    public void Uniform_numbers_stay_inside_and_fill_the_unit_interval()
    {
        var random = new SeededRandom(5);
        var tenths = new int[10];
        for (var i = 0; i < 20_000; i++)
        {
            var number = random.NextDouble();
            Assert.True(number is > 0 and < 1);
            tenths[(int)(number * 10)]++;
        }

        // Four and a half binomial standard errors for each tenth.
        Assert.All(tenths, count => Close.Absolute(2000, count, 4.5 * Math.Sqrt(20_000 * 0.09)));
    }

    [Fact]
    public void Normal_numbers_have_mean_zero_deviation_one_and_no_skewness()
    {
        var random = new SeededRandom(6);
        var numbers = new double[20_000];
        for (var i = 0; i < numbers.Length; i++)
        {
            numbers[i] = random.NextNormal();
        }

        var spread = Computed.Value(Spread.Summarize(numbers));

        var standardError = 1 / Math.Sqrt(numbers.Length);
        Close.Absolute(0, spread.Mean, 4 * standardError);
        Close.Absolute(1, spread.StandardDeviation, 4 * standardError / Math.Sqrt(2));
        Close.Absolute(0, spread.Skewness, 4 * standardError * Math.Sqrt(6));
    }

    private static ulong Whole(string text) => ulong.Parse(text, CultureInfo.InvariantCulture);
}
