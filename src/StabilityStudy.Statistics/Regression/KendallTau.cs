namespace StabilityStudy.Statistics.Regression;

/// <summary>Kendall's rank correlation τ-b with its interval.</summary>
/// <param name="Count">Number of pairs (x, y).</param>
/// <param name="Concordant">Number of twos of pairs that x and y order alike.</param>
/// <param name="Discordant">Number of twos of pairs that x and y order oppositely.</param>
/// <param name="TiedInX">Number of twos of pairs with the same x, whether or not y is the same too.</param>
/// <param name="TiedInY">Number of twos of pairs with the same y, whether or not x is the same too.</param>
/// <param name="TauB">τ-b, from −1 to 1.</param>
/// <param name="StandardError">Asymptotic standard error.</param>
/// <param name="Lower">Lower end of the interval, not below −1.</param>
/// <param name="Upper">Upper end of the interval, not above 1.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
public sealed record KendallTau(
    int Count,
    long Concordant,
    long Discordant,
    long TiedInX,
    long TiedInY,
    double TauB,
    double StandardError,
    double Lower,
    double Upper,
    double ConfidenceLevel
);
