namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>
/// A drift that the literature reports, as context: it feeds no conclusion. Source of all: the consensus of 43 published
/// studies in Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117.
/// </summary>
/// <param name="Analytes">Codes of the analytes it is about.</param>
/// <param name="IsFrozen">Whether the specimens were frozen.</param>
/// <param name="Says">The published figures: "the aPTT of unfrozen specimens prolonged by …".</param>
/// <param name="PercentAfter">Change in percent since collection after hours.</param>
internal sealed record PublishedDrift(
    ImmutableArray<string> Analytes,
    bool IsFrozen,
    string Says,
    Func<double, double> PercentAfter
)
{
    public const string Source =
        "a 2025 consensus of 43 published studies (Clin Chem Lab Med 2025, doi 10.1515/cclm-2025-0117)";

    private const double HoursOfMonth = 30 * 24;

    /// <summary>
    /// The form of the logarithmic curve is not in the abstract: the logarithm that is 0 at collection and 6.1 % at 6 h, as
    /// published, gives 10.1 % at 24 h, where 10 % is published.
    /// </summary>
    private static readonly ImmutableArray<PublishedDrift> s_known =
    [
        new(
            ["aPTT"],
            IsFrozen: false,
            "the aPTT of unfrozen specimens prolonged by 6.1 % at 6 h and 10 % at 24 h, rising with the logarithm of time",
            hours => 6.1 * Math.Log(1 + hours) / Math.Log(1 + 6)
        ),
        new(
            ["PT"],
            IsFrozen: false,
            "the PT of unfrozen specimens prolonged by 2.9 % a day, in proportion to time, by a model whose strength it calls limited",
            hours => 2.9 * hours / 24
        ),
        new(
            ["PT", "aPTT"],
            IsFrozen: true,
            "PT and aPTT of frozen plasma prolonged by 0.8 % a month",
            hours => 0.8 * hours / HoursOfMonth
        ),
    ];

    /// <summary>What is published for specimens without anticoagulant stands beside such a group only; null for others.</summary>
    public static PublishedDrift? For(SequenceNames names) =>
        names.Origin == TimeOrigin.Collection && IsWithoutAnticoagulant(names.Group)
            ? s_known.FirstOrDefault(drift =>
                drift.IsFrozen == names.Storage.LowestCelsius < 0
                && drift.Analytes.Contains(names.Analyte.Id, StringComparer.OrdinalIgnoreCase)
            )
            : null;

    private static bool IsWithoutAnticoagulant(PatientGroup group) =>
        group.Id.Equals("none", StringComparison.OrdinalIgnoreCase)
        || group.Name.Contains("no anticoagulant", StringComparison.OrdinalIgnoreCase);
}
