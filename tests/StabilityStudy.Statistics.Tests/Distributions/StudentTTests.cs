using CsCheck;
using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

public sealed class StudentTTests
{
    [Fact]
    public void Quantiles_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/student_t.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var p = table.Number(row, "p");
            // A p of 0.4999999 leaves 1e-16/1e-7 relative resolution of the quantile; R's own is of that order.
            Close.Relative(
                table.Number(row, "t"),
                StudentT.Quantile(p, table.Number(row, "df")),
                Math.Abs(p - 0.5) < 1e-3 || p > 0.99999999 ? 1e-7 : 1e-10
            );
        }
    }

    [Fact]
    public void Probabilities_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/student_t.csv");
        for (var row = 0; row < table.Count; row++)
        {
            Close.Relative(
                table.Number(row, "p"),
                StudentT.Cdf(table.Number(row, "t"), table.Number(row, "df")),
                1e-12
            );
        }
    }

    [Fact]
    public void One_degree_of_freedom_is_the_Cauchy_distribution()
    {
        foreach (var t in new[] { -1e8, -3, -1e-9, 0, 1e-9, 0.5, 1, 40 })
        {
            Close.Absolute(0.5 + (Math.Atan(t) / Math.PI), StudentT.Cdf(t, 1), 1e-14);
        }
    }

    [Fact]
    public void Distribution_is_symmetric() =>
        Gen.Select(Gen.Double[1e-9, 0.5], Gen.Double[1, 500])
            .Sample(
                (p, df) =>
                    Close.Relative(-StudentT.Quantile(p, df), StudentT.Quantile(1 - p, df), 1e-6)
            );

    [Fact]
    public void Probability_undoes_the_quantile() =>
        Gen.Select(Gen.Double[1e-9, 1 - 1e-9], Gen.Double[1, 2000])
            .Sample(
                (p, df) => Close.Relative(p, StudentT.Cdf(StudentT.Quantile(p, df), df), 1e-12)
            );

    [Fact]
    public void Infinities_have_all_or_nothing_below_them()
    {
        Assert.Equal(0, StudentT.Cdf(double.NegativeInfinity, 3));
        Assert.Equal(1, StudentT.Cdf(double.PositiveInfinity, 3));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.99)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Degrees_of_freedom_below_one_throw(double df)
    {
        Assert.Throws<ArgumentException>("degreesOfFreedom", () => StudentT.Cdf(1, df));
        Assert.Throws<ArgumentException>("degreesOfFreedom", () => StudentT.Quantile(0.9, df));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Probability_outside_the_open_unit_interval_throws(double p) =>
        Assert.Throws<ArgumentException>("probability", () => StudentT.Quantile(p, 5));

    [Fact]
    public void What_is_no_number_throws() =>
        Assert.Throws<ArgumentException>("t", () => StudentT.Cdf(double.NaN, 5));

    [Fact]
    public void At_zero_and_infinity_it_is_one_half_and_one()
    {
        Assert.Equal(0.5, StudentT.Cdf(0, 7));
        Assert.Equal(1, StudentT.Cdf(double.PositiveInfinity, 7));
        Assert.Equal(0, StudentT.Cdf(double.NegativeInfinity, 7));
        Assert.Equal(0, StudentT.Quantile(0.5, 7));
    }
}
