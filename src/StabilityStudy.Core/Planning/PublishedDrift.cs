using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Planning;

/// <summary>
/// The course of a change that the literature reports for specimens without anticoagulant: context and a supposition for planning; nothing is concluded from it. Source of all: the consensus of 43 published
/// studies in Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117.
/// </summary>
/// <param name="Analytes">Codes of the analytes it is about.</param>
/// <param name="IsFrozen">Whether the specimens were frozen.</param>
/// <param name="Shape">Its shape, 0 at collection.</param>
/// <param name="Percent">Published change, percent of the value at collection.</param>
/// <param name="AtHours">After how many hours.</param>
public sealed record PublishedDrift(
    ImmutableArray<string> Analytes,
    bool IsFrozen,
    DriftShape Shape,
    double Percent,
    double AtHours
)
{
    private const double HoursOfMonth = 30 * 24;

    /// <summary>
    /// The form of the logarithmic curve is not in the abstract: the logarithm that is 0 at collection and 6.1 % at 6 h, as
    /// published, gives 10.1 % at 24 h, where 10 % is published.
    /// </summary>
    private static readonly ImmutableArray<PublishedDrift> s_known =
    [
        new(["aPTT"], IsFrozen: false, DriftShape.Logarithmic, 6.1, 6),
        new(["PT"], IsFrozen: false, DriftShape.Linear, 2.9, 24),
        new(["PT", "aPTT"], IsFrozen: true, DriftShape.Linear, 0.8, HoursOfMonth),
    ];

    /// <summary>Change since collection, percent.</summary>
    /// <param name="hours">Hours since collection.</param>
    public double PercentAfter(double hours) =>
        Percent * SpecimenSlopes.Transform(Shape, hours) / SpecimenSlopes.Transform(Shape, AtHours);

    /// <summary>What is published for specimens without anticoagulant stands beside such a group only; null for others.</summary>
    /// <param name="origin">What times count from.</param>
    /// <param name="analyte">The analyte.</param>
    /// <param name="group">The patient group.</param>
    /// <param name="storage">The storage.</param>
    public static PublishedDrift? For(
        TimeOrigin origin,
        Analyte analyte,
        PatientGroup group,
        Storage storage
    )
    {
        ArgumentNullException.ThrowIfNull(analyte);
        ArgumentNullException.ThrowIfNull(group);
        ArgumentNullException.ThrowIfNull(storage);
        return origin == TimeOrigin.Collection && IsWithoutAnticoagulant(group)
            ? s_known.FirstOrDefault(drift =>
                drift.IsFrozen == storage.LowestCelsius < 0
                && drift.Analytes.Contains(analyte.Id, StringComparer.OrdinalIgnoreCase)
            )
            : null;
    }

    private static bool IsWithoutAnticoagulant(PatientGroup group) =>
        group.Id.Equals("none", StringComparison.OrdinalIgnoreCase)
        || group.Name.Contains("no anticoagulant", StringComparison.OrdinalIgnoreCase);
}
