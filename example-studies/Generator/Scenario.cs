namespace ExampleStudies.Generator;

/// <summary>
/// The invented world of the example: every number the random draws are made with. Where a published figure stands behind a
/// number it is named; all others are invented to look like an ordinary coagulation laboratory.
/// </summary>
internal static class Scenario
{
    /// <summary>The seed of all random streams.</summary>
    public const ulong Seed = 20260302;

    /// <summary>Specimens without heparin collected on one day; ten days make 50.</summary>
    public const int PerDay = 5;

    /// <summary>Specimens on heparin collected on one day; with one more on the last of ten days they are 61.</summary>
    public const int OnHeparinPerDay = 6;

    /// <summary>How many specimens of a group are collected on a day, given by its number from 0.</summary>
    public static int CountOn(int day, bool onHeparin) =>
        !onHeparin ? PerDay
        : day == Days.Length - 1 ? OnHeparinPerDay + 1
        : OnHeparinPerDay;

    /// <summary>Median and spread (SD of the logarithm) of an ordinary aPTT without heparin, in seconds.</summary>
    public const double OrdinarySeconds = 31.0;

    /// <inheritdoc cref="OrdinarySeconds"/>
    public const double OrdinarySpread = 0.10;

    /// <summary>One patient in eight without anticoagulant has a prolonged aPTT (factor deficiency, lupus anticoagulant).</summary>
    public const int ProlongedEvery = 8;

    /// <summary>Median and spread (SD of the logarithm) of the aPTT on heparin at collection, in seconds.</summary>
    public const double HeparinSeconds = 68.0;

    /// <inheritdoc cref="HeparinSeconds"/>
    public const double HeparinSpread = 0.25;

    /// <summary>
    /// Rise of the aPTT without heparin in percent per unit of ln(1 + t/1 h), t the time since collection. 3.135 × ln 7 = 6.1 %
    /// at 6 h and 3.135 × ln 25 = 10 % at 24 h: the pooled curve of 43 studies in Gomez Rioja and others, Clin Chem Lab Med 2025.
    /// </summary>
    public const double DriftPercent = 3.135;

    /// <summary>Standard deviation of that rise from patient to patient (invented).</summary>
    public const double DriftPercentSpread = 1.0;

    /// <summary>
    /// Further rise in percent per hour after <see cref="LateDriftFromHours"/> (invented: whole blood is given a less stable
    /// second half than the pooled curve has, so that the longest time point of the example is a hard decision).
    /// </summary>
    public const double LateDriftPercentPerHour = 0.4;

    /// <inheritdoc cref="LateDriftPercentPerHour"/>
    public const double LateDriftFromHours = 8.0;

    /// <summary>
    /// Share of heparin's effect that platelet factor 4 takes away in the long run, approached as 1 − exp(−t/3 h). Set so that
    /// the mean change at 4 h against 1 h lies between two published ones in citrate tubes:
    /// −7.9 s (123 patients; Toulon and others, Thromb Res 2020) and −4.0 s (31 patients; Billoir and others 2020).
    /// </summary>
    public const double NeutralizedShare = 0.30;

    /// <summary>Standard deviation of that share from patient to patient (invented).</summary>
    public const double NeutralizedShareSpread = 0.08;

    /// <summary>Time constant of the neutralization, in hours (invented).</summary>
    public const double NeutralizationHours = 3.0;

    /// <summary>Imprecision within a run, as a coefficient of variation in percent.</summary>
    public const double WithinRunPercent = 1.9;

    /// <summary>Standard deviation of the error that all results of one run share, in percent.</summary>
    public const double RunPercent = 1.0;

    /// <summary>
    /// Two control levels, allowed three between-run SD (3 × 2.1 %) around the target, and a bridging plasma, tested twice: portions of one
    /// frozen pool, thawed for each run, which show what the runs add to the change.
    /// </summary>
    public static readonly ImmutableArray<ControlMaterial> Controls =
    [
        new("QC-1", "aPTT", "s", 30.0m, 6.3m, 1, WithinRunPercent),
        new("QC-2", "aPTT", "s", 64.0m, 6.3m, 1, WithinRunPercent),
        new("BRIDGE", "aPTT", "s", 37.0m, 0m, 1, WithinRunPercent),
    ];

    /// <summary>Tubes of one draw: the baseline first, then one for each delay at which the group is tested.</summary>
    public static ImmutableArray<PlannedTube> TubesOf(bool onHeparin) =>
        onHeparin ? s_heparinTubes : s_tubes;

    private static readonly ImmutableArray<PlannedTube> s_tubes =
    [
        new("A", "baseline", "BL", 0, "LS1"),
        new("B", "6 h", "6H", 6, "LS1"),
        new("C", "8 h", "8H", 8, "LS1"),
        new("D", "12 h", "12H", 12, "LS2"),
    ];

    private static readonly ImmutableArray<PlannedTube> s_heparinTubes =
    [
        new("A", "baseline", "BL", 0, "LS1"),
        new("B", "2 h", "2H", 2, "LS1"),
        new("C", "4 h", "4H", 4, "LS1"),
        new("D", "6 h", "6H", 6, "LS1"),
    ];

    /// <summary>Midnight of each collection day. The offset changes when summer time begins in New York on 8 March 2026.</summary>
    public static readonly ImmutableArray<DateTimeOffset> Days =
    [
        .. new[] { 2, 3, 4, 5, 6, 9, 10, 11, 12, 13 }.Select(day => new DateTimeOffset(
            2026,
            3,
            day,
            0,
            0,
            0,
            TimeSpan.FromHours(day < 8 ? -5 : -4)
        )),
    ];
}

/// <summary>What the protocol asks of one tube of each draw.</summary>
/// <param name="Letter">Letter that makes the tube code from the specimen code.</param>
/// <param name="TimePoint">Time point as written in the results.</param>
/// <param name="RunSuffix">End of the run code; every day has one run for each time point.</param>
/// <param name="Hours">Planned delay since collection in hours; 0 is the baseline.</param>
/// <param name="Operator">Code of the person on duty at that hour.</param>
internal sealed record PlannedTube(
    string Letter,
    string TimePoint,
    string RunSuffix,
    int Hours,
    string Operator
)
{
    /// <summary>Whether this is the tube tested soon after collection.</summary>
    public bool IsBaseline => Hours == 0;
}
