using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class ShapiroWilkTests
{
    [Theory]
    [InlineData("published/shapiro_wilk_scipy_n20a.csv", 0.90047287931756, 0.04208957522226)]
    [InlineData("published/shapiro_wilk_scipy_n20b.csv", 0.95902694603234, 0.5245979304707)]
    public void Published_samples_give_the_printed_values(string file, double w, double p)
    {
        var test = Computed.Value(ShapiroWilk.Compute(ReferenceTable.Read(file).Column("y")));

        Assert.Equal(20, test.Count);
        Close.Absolute(w, test.W, 1e-12);
        Close.Absolute(p, test.PValue, 1e-12);
    }

    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/shapiro_wilk.csv");
        for (var row = 0; row < table.Count; row++)
        {
            double[] values = [.. table.Text(row, "values").Split(' ').Select(Number)];
            var test = Computed.Value(ShapiroWilk.Compute(values));

            Close.Relative(table.Number(row, "w"), test.W, 1e-11);
            Close.Absolute(table.Number(row, "p"), test.PValue, 1e-9);
        }
    }

    [Fact]
    public void Shift_scale_mirror_and_order_change_nothing()
    {
        double[] values = [1, 2, 2.5, 4, 8, 9, 9.5, 17];
        var plain = Computed.Value(ShapiroWilk.Compute(values)).W;

        Close.Relative(plain, Of([.. values.Select(v => (3 * v) + 100)]), 1e-12);
        Close.Relative(plain, Of([.. values.Select(v => v + 1e6)]), 1e-12);
        Close.Relative(plain, Of([.. values.Select(v => v * 1e-200)]), 1e-12);
        Close.Relative(plain, Of([.. values.Select(v => -v)]), 1e-12);
        Close.Relative(plain, Of([.. values.Reverse()]), 1e-14);
        Assert.Equal([1, 2, 2.5, 4, 8, 9, 9.5, 17], values);

        static double Of(double[] v) => Computed.Value(ShapiroWilk.Compute(v)).W;
    }

    [Fact]
    public void The_largest_samples_agree_with_R()
    {
        // R 4.2.2: shapiro.test(sqrt(1:5000)). One value more is too many.
        double[] roots = [.. Enumerable.Range(1, 5000).Select(i => Math.Sqrt(i))];
        var test = Computed.Value(ShapiroWilk.Compute(roots));

        Assert.Equal(5000, test.Count);
        Close.Relative(0.94693150234563006, test.W, 1e-11);
        Close.Relative(3.8027547015929554e-39, test.PValue, 1e-8);
        Computed.Refusal(AssumptionCode.TooManyValues, ShapiroWilk.Compute([.. roots, 71]));
    }

    [Theory]
    [InlineData(new double[] { 1, 2, 3 }, 1, 1)]
    [InlineData(new double[] { 0, 0, 1 }, 0.75, 0)]
    [InlineData(new double[] { 0, 1, 1 }, 0.75, 0)]
    public void Three_values_reach_both_ends_of_the_range(double[] values, double w, double p)
    {
        // At n = 3 the test is exact: W is 1 for equal steps and 3/4 when two values are equal.
        var test = Computed.Value(ShapiroWilk.Compute(values));

        Close.Absolute(w, test.W, 1e-15);
        Close.Absolute(p, test.PValue, 1e-7);
        Assert.InRange(test.PValue, 0, 1);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(30)]
    public void Normal_samples_fall_below_five_percent_about_that_often(int n)
    {
        const int samples = 3000;
        var random = new SeededRandom(20240817);
        var below = 0;
        var values = new double[n];
        for (var sample = 0; sample < samples; sample++)
        {
            for (var i = 0; i < n; i++)
            {
                values[i] = random.NextNormal();
            }

            below += Computed.Value(ShapiroWilk.Compute(values)).PValue < 0.05 ? 1 : 0;
        }

        // Four binomial standard errors.
        Close.Absolute(0.05, (double)below / samples, 0.016);
    }

    [Fact]
    public void Samples_without_spread_too_small_or_too_large_are_refused()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, ShapiroWilk.Compute([1, 2]));
        Computed.Refusal(AssumptionCode.ZeroSpread, ShapiroWilk.Compute([1, 1, 1]));
        Computed.Refusal(
            AssumptionCode.TooManyValues,
            ShapiroWilk.Compute([.. Enumerable.Range(0, 5001).Select(i => (double)i)])
        );
        Assert.Throws<ArgumentException>("values", () => ShapiroWilk.Compute([1, double.NaN, 2]));
    }

    private static double Number(string text) =>
        double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
