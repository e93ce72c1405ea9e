using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Tests.Planning;

public sealed class ChanceOfSupportTests
{
    /// <summary>The bounds are our own choice: 80, 50, 20 and 5 %, each belonging to the better word.</summary>
    [Theory]
    [InlineData(1, ChanceOfSupport.Likely)]
    [InlineData(0.80, ChanceOfSupport.Likely)]
    [InlineData(0.7999, ChanceOfSupport.Open)]
    [InlineData(0.50, ChanceOfSupport.Open)]
    [InlineData(0.4999, ChanceOfSupport.Doubtful)]
    [InlineData(0.20, ChanceOfSupport.Doubtful)]
    [InlineData(0.1999, ChanceOfSupport.Unlikely)]
    [InlineData(0.05, ChanceOfSupport.Unlikely)]
    [InlineData(0.0499, ChanceOfSupport.OutOfReach)]
    [InlineData(0, ChanceOfSupport.OutOfReach)]
    [InlineData(double.NaN, ChanceOfSupport.OutOfReach)]
    public void A_chance_has_one_word(double chance, ChanceOfSupport word) =>
        Assert.Equal(word, ChancesOfSupport.Of(chance));

    /// <summary>A simulated rate at a bound is a quotient of whole numbers.</summary>
    [Fact]
    public void A_rate_exactly_at_a_bound_has_the_better_word()
    {
        Assert.Equal(ChanceOfSupport.Likely, ChancesOfSupport.Of(480 / 600.0));
        Assert.Equal(ChanceOfSupport.Doubtful, ChancesOfSupport.Of(120 / 600.0));
        Assert.Equal(ChanceOfSupport.Unlikely, ChancesOfSupport.Of(30 / 600.0));
    }
}
