using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

/// <summary>Power of one-sample t tests, R values as kept in the statsmodels test suite: a published use of the noncentral t distribution.</summary>
public sealed class PowerReferenceTests
{
    [Theory]
    [InlineData(0.2, 20, 0.1359562887679666)]
    [InlineData(1, 30, 0.9995636009612725)]
    public void Two_sided_power_agrees(double effect, int n, double power)
    {
        var critical = StudentT.Quantile(0.975, n - 1);
        var noncentrality = effect * Math.Sqrt(n);

        Close.Absolute(
            power,
            1
                - NoncentralT.Cdf(critical, n - 1, noncentrality)
                + NoncentralT.Cdf(-critical, n - 1, noncentrality),
            1e-11
        );
    }

    [Theory]
    [InlineData(1, 30, 0.999892010204909)]
    [InlineData(0.05, 20, 0.0764888785042198)]
    public void One_sided_power_agrees(double effect, int n, double power)
    {
        var critical = StudentT.Quantile(0.95, n - 1);

        Close.Absolute(power, 1 - NoncentralT.Cdf(critical, n - 1, effect * Math.Sqrt(n)), 1e-11);
    }
}
