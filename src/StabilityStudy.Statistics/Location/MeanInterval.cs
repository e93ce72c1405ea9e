namespace StabilityStudy.Statistics.Location;

/// <summary>An arithmetic mean with its two-sided t interval; every number but the first and the degrees of freedom is in the unit of the values.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="StandardDeviation">Standard deviation with divisor n − 1.</param>
/// <param name="StandardError">Standard deviation divided by √n.</param>
/// <param name="DegreesOfFreedom">n − 1.</param>
/// <param name="ConfidenceLevel">Two-sided level, for example 0.90.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
public sealed record MeanInterval(
    int Count,
    double Mean,
    double StandardDeviation,
    double StandardError,
    double DegreesOfFreedom,
    double ConfidenceLevel,
    double Lower,
    double Upper
);
