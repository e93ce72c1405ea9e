using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>
/// Every published case that the program is held to: what it is about, its source, why the figures may be as far apart as they may,
/// and each figure with the published digits. The methods are those that a study uses.
/// </summary>
internal static class PublishedCases
{
    /// <summary>All of them, computed now.</summary>
    public static ImmutableArray<ProofCase> Compute() =>
        [
            .. LocationCases.Compute(),
            .. AgreementCases.Compute(),
            .. RegressionCases.Compute(),
            .. PlanningCases.Compute(),
        ];
}
