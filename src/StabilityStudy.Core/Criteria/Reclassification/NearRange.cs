namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>The baselines near enough to a level for a change of side to tell something; specimens far from it only dilute a share.</summary>
/// <param name="Lowest">Lowest baseline that counts, in the unit of the analyte.</param>
/// <param name="Highest">Highest baseline that counts.</param>
/// <param name="SpecimensMinimum">Fewest such specimens; with fewer no level is met.</param>
public sealed record NearRange(decimal Lowest, decimal Highest, int SpecimensMinimum)
{
    /// <summary>Whether a baseline surely lies outside; one that a limit of measurement leaves open does not.</summary>
    internal bool Excludes(ReportedResult? baseline) =>
        ResultRange.Of(baseline) is { } range && (range.Highest < Lowest || range.Lowest > Highest);
}
