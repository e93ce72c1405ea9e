namespace StabilityStudy.Statistics.Regression;

/// <summary>A coefficient of a line with its standard error and two-sided confidence interval.</summary>
/// <param name="Value">The estimate: a slope has no unit of its own (unit of y per unit of x), an intercept has the unit of y.</param>
/// <param name="StandardError">Standard error, in the unit of the coefficient.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
public sealed record CoefficientInterval(
    double Value,
    double StandardError,
    double Lower,
    double Upper
)
{
    /// <summary>Value ± t·standard error.</summary>
    internal static CoefficientInterval Of(double value, double standardError, double t) =>
        new(value, standardError, value - (t * standardError), value + (t * standardError));
}

/// <summary>A fitted straight line y = intercept + slope·x.</summary>
/// <param name="Count">Number of pairs.</param>
/// <param name="Intercept">Intercept, in the unit of y.</param>
/// <param name="Slope">Slope.</param>
/// <param name="ResidualStandardDeviation">
/// √(Σ(y − a − bx)²/(n − 2)), in the unit of y; for weighted Deming regression √(Σw(y − a − bx)²/(n − 2)), a fraction of the level.
/// </param>
/// <param name="ConfidenceLevel">Two-sided level of both intervals.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the t quantile, n − 2.</param>
public sealed record LineFit(
    int Count,
    CoefficientInterval Intercept,
    CoefficientInterval Slope,
    double ResidualStandardDeviation,
    double ConfidenceLevel,
    double DegreesOfFreedom
);

/// <summary>The two numbers of a straight line y = intercept + slope·x, without intervals.</summary>
internal sealed record Line(double Intercept, double Slope)
{
    /// <summary>y − intercept − slope·x.</summary>
    public double Residual(double x, double y) => y - Intercept - (Slope * x);

    /// <summary>√(Σ(y − a − bx)²/(n − 2)).</summary>
    public double ResidualStandardDeviation(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double sum = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = Residual(x[i], y[i]);
            sum += residual * residual;
        }

        return Math.Sqrt(sum / (x.Length - 2));
    }
}
