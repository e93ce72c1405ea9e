namespace StabilityStudy.Statistics.Proportions;

/// <summary>A share of successes with exact bounds; shares are fractions between 0 and 1.</summary>
/// <param name="Successes">Number of successes.</param>
/// <param name="Trials">Number of trials.</param>
/// <param name="Share">Successes divided by trials.</param>
/// <param name="ConfidenceLevel">Level of each one-sided bound alone, and of the two two-sided bounds together.</param>
/// <param name="OneSidedLower">The true share is at least this, with the confidence level.</param>
/// <param name="OneSidedUpper">The true share is at most this, with the confidence level.</param>
/// <param name="TwoSidedLower">Lower end of the two-sided interval.</param>
/// <param name="TwoSidedUpper">Upper end of the two-sided interval.</param>
public sealed record ProportionBounds(
    int Successes,
    int Trials,
    double Share,
    double ConfidenceLevel,
    double OneSidedLower,
    double OneSidedUpper,
    double TwoSidedLower,
    double TwoSidedUpper
);
