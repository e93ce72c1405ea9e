namespace StabilityStudy.Statistics.Regression;

/// <summary>The line of Passing and Bablok with rank intervals.</summary>
/// <param name="Count">Number of pairs.</param>
/// <param name="SlopeCount">N, the number of slopes between two pairs that were ranked: 0/0 and −1 are left out, vertical slopes count.</param>
/// <param name="SlopesBelowMinusOne">K, the number of ranked slopes below −1, by which the median is shifted.</param>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeLower">Lower end of the interval of the slope.</param>
/// <param name="SlopeUpper">Upper end of the interval of the slope.</param>
/// <param name="Intercept">Intercept, in the unit of y.</param>
/// <param name="InterceptLower">Lower end of the interval of the intercept, from the upper slope.</param>
/// <param name="InterceptUpper">Upper end of the interval of the intercept, from the lower slope.</param>
/// <param name="ConfidenceLevel">Two-sided level of the intervals.</param>
/// <param name="Linearity">Whether the pairs bend away from the line, by the cusum test at 5 %.</param>
public sealed record PassingBablokFit(
    int Count,
    long SlopeCount,
    long SlopesBelowMinusOne,
    double Slope,
    double SlopeLower,
    double SlopeUpper,
    double Intercept,
    double InterceptLower,
    double InterceptUpper,
    double ConfidenceLevel,
    CusumLinearity Linearity
);
