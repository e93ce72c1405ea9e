using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

/// <summary>Against what F is in closed form, and against 5 % points of printed tables (Pearson and Hartley, Biometrika Tables, table 18, from memory).</summary>
public sealed class FisherFTests
{
    /// <summary>With two and two degrees of freedom P(F &gt; f) = 1/(1 + f).</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0.5)]
    [InlineData(3, 0.25)]
    [InlineData(99, 0.01)]
    public void Two_and_two_degrees_of_freedom_have_a_closed_form(double f, double expected) =>
        Close.Absolute(expected, FisherF.UpperTail(f, 2, 2), 1e-14);

    /// <summary>F with one degree of freedom is t squared.</summary>
    [Theory]
    [InlineData(1.5, 4)]
    [InlineData(2.2, 17)]
    public void One_degree_of_freedom_is_a_squared_t(double t, double degrees) =>
        Close.Relative(2 * StudentT.Cdf(-t, degrees), FisherF.UpperTail(t * t, 1, degrees), 1e-12);

    [Theory]
    [InlineData(3.71, 3, 10)]
    [InlineData(2.71, 5, 20)]
    [InlineData(4.06, 10, 6)]
    public void Printed_five_percent_points(double f, double numerator, double denominator) =>
        Close.Absolute(0.05, FisherF.UpperTail(f, numerator, denominator), 2e-4);

    [Fact]
    public void A_denominator_of_zero_is_never_exceeded_by_chance() =>
        Assert.Equal(0, FisherF.UpperTail(double.PositiveInfinity, 3, 10));
}
