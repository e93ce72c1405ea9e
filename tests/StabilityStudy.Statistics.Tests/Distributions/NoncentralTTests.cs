using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

public sealed class NoncentralTTests
{
    [Fact]
    public void Probabilities_agree_with_thirty_digit_integration()
    {
        var table = ReferenceTable.Read("computed/noncentral_t_cdf.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var actual = NoncentralT.Cdf(
                table.Number(row, "t"),
                table.Number(row, "df"),
                table.Number(row, "ncp")
            );
            Close.Absolute(table.Number(row, "cdf"), actual, 1e-12);
        }
    }

    [Fact]
    public void Quantiles_undo_thirty_digit_probabilities()
    {
        var table = ReferenceTable.Read("computed/noncentral_t_cdf.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var p = table.Number(row, "cdf");
            if (p is < 1e-3 or > 0.999)
            {
                continue;
            }

            var quantile = NoncentralT.Quantile(
                p,
                table.Number(row, "df"),
                table.Number(row, "ncp")
            );
            Close.Absolute(
                table.Number(row, "t"),
                quantile,
                1e-9 * Math.Max(1, Math.Abs(quantile))
            );
        }
    }

    [Fact]
    public void Quantiles_agree_with_R()
    {
        // R's series stops at an absolute 1e-12 and its search at a relative 1e-11; it warns about full precision here.
        var table = ReferenceTable.Read("computed/noncentral_t_quantile.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var actual = NoncentralT.Quantile(
                table.Number(row, "p"),
                table.Number(row, "n") - 1,
                table.Number(row, "ncp")
            );
            Close.Relative(table.Number(row, "t"), actual, 1e-8);
        }
    }

    [Fact]
    public void Zero_noncentrality_is_Students_distribution()
    {
        foreach (var df in new[] { 1.0, 2, 3.5, 16, 199, 9999 })
        {
            foreach (var t in new[] { -30.0, -2, -0.1, 0, 1, 5 })
            {
                Close.Absolute(StudentT.Cdf(t, df), NoncentralT.Cdf(t, df, 0), 1e-12);
            }
        }
    }

    [Fact]
    public void At_zero_only_the_numerator_counts()
    {
        foreach (var ncp in new[] { -30, -1, 0.5, 8 })
        {
            Close.Relative(Normal.Cdf(-ncp), NoncentralT.Cdf(0, 7, ncp), 1e-12);
        }
    }

    [Fact]
    public void Turning_the_sign_of_the_noncentrality_mirrors_the_distribution()
    {
        foreach (var t in new[] { -3.0, 0.4, 12 })
        {
            Close.Absolute(1 - NoncentralT.Cdf(t, 9, 2.5), NoncentralT.Cdf(-t, 9, -2.5), 1e-14);
        }
    }

    [Fact]
    public void Extreme_arguments_give_all_or_nothing()
    {
        Close.Absolute(0, NoncentralT.Cdf(-1e200, 5, 3), 1e-15);
        Close.Absolute(1, NoncentralT.Cdf(1e200, 5, 3), 1e-15);
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("t", () => NoncentralT.Cdf(double.NaN, 5, 1));
        Assert.Throws<ArgumentException>("degreesOfFreedom", () => NoncentralT.Cdf(1, 0.5, 1));
        Assert.Throws<ArgumentException>(
            "noncentrality",
            () => NoncentralT.Cdf(1, 5, double.PositiveInfinity)
        );
        Assert.Throws<ArgumentException>("probability", () => NoncentralT.Quantile(1, 5, 1));
    }
}
