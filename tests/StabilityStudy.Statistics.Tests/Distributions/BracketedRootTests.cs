using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

/// <summary>Roots that are known, and how often the function is asked: halving alone takes 53 steps to the last bit.</summary>
public sealed class BracketedRootTests
{
    private static readonly Dictionary<string, Func<double, double>> s_rising = new()
    {
        // Newton's own example; its root in print is 2.09455148154233.
        ["x³ − 2x − 5"] = x => (x * x * x) - (2 * x) - 5,
        ["eˣ − 2"] = x => Math.Exp(x) - 2,
        ["arctan(x − 0.7)"] = x => Math.Atan(x - 0.7),
        ["tanh(50x − 15)"] = x => Math.Tanh(50 * (x - 0.3)),
        ["1 − 2e⁻ˣ"] = x => 1 - (2 * Math.Exp(-x)),
        ["step at 0.3"] = x => x < 0.3 ? -1 : 1,
    };

    [Theory]
    [InlineData("x³ − 2x − 5", 2, 3, 2.0945514815423265, 9)]
    [InlineData("x³ − 2x − 5", 0.9, 30, 2.0945514815423265, 14)]
    [InlineData("eˣ − 2", -30, 5, 0.69314718055994531, 13)]
    [InlineData("arctan(x − 0.7)", -10, 30, 0.7, 13)]
    [InlineData("tanh(50x − 15)", 0, 1, 0.3, 13)]
    [InlineData("1 − 2e⁻ˣ", 0, 200, 0.69314718055994531, 15)]
    [InlineData("step at 0.3", 0, 1, 0.3, 53)]
    public void Finds_the_root_to_the_last_bits_in_few_steps(
        string name,
        double lower,
        double upper,
        double root,
        int steps
    )
    {
        var asked = 0;
        var found = BracketedRoot.Find(Counted, lower, upper, 1);

        Close.Absolute(root, found, 4e-16 * Math.Max(root, 1));
        // One step is left to another platform's last digit of a logarithm.
        Assert.InRange(asked, 2, steps + 1);

        double Counted(double x)
        {
            asked++;
            Assert.InRange(x, lower, upper);
            return s_rising[name](x);
        }
    }

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(-1, 0, 0)]
    [InlineData(-2, 3, 0)]
    public void A_root_at_an_end_or_of_high_order_is_found(double lower, double upper, double root)
    {
        var found = BracketedRoot.Find(x => Math.Pow(x, 9), lower, upper, 1);

        Close.Absolute(root, found, 1e-15);
    }

    [Theory]
    [InlineData(1e-200)]
    [InlineData(1e-20)]
    public void Small_roots_keep_their_digits_where_the_scale_asks_for_them(double root)
    {
        var found = BracketedRoot.Find(x => x - root, 0, 1, 1e-300);

        Close.Relative(root, found, 1e-15);
    }

    [Fact]
    public void A_bracket_without_width_is_its_own_root() =>
        Assert.Equal(3, BracketedRoot.Find(x => x - 2.5, 3, 3, 1));
}
