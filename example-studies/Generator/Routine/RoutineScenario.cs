namespace ExampleStudies.Generator.Routine;

/// <summary>
/// The invented world of the routine example. Where a published figure stands behind a number it is named; all others are
/// invented. The aPTT ages as in <see cref="Scenario"/>.
/// </summary>
internal static class RoutineScenario
{
    /// <summary>Names the random streams.</summary>
    public const string Study = "routine";

    /// <summary>ISI and mean normal PT (s) of the PT reagent's lot: INR = (PT / 12.0)^1.05.</summary>
    public const double Isi = 1.05;

    /// <inheritdoc cref="Isi"/>
    public const double MeanNormalSeconds = 12.0;

    /// <summary>Rise of the PT without anticoagulant in percent a day: pooled, Gomez Rioja and others, Clin Chem Lab Med 2025.</summary>
    public const double PtPercentPerDay = 2.9;

    /// <summary>Spread of it from patient to patient (invented).</summary>
    public const double PtPercentPerDaySpread = 1.0;

    /// <summary>Rise of the PT on a vitamin K antagonist: makes the INR rise by 6 % a day, Froom and others 2001.</summary>
    public const double VkaPtPercentPerDay = 5.7;

    /// <summary>Spread of it (invented; single INRs are known to move far more than their mean, Leeming and others 1998).</summary>
    public const double VkaPtPercentPerDaySpread = 2.5;

    /// <summary>Loss of factor VIII in percent an hour: 5.2 % at 6 h, Toulon and others, Int J Lab Hematol 2017.</summary>
    public const double FactorVIIIPercentPerHour = 5.2 / 6;

    /// <summary>From 6 h on, so that 8.5 % are lost at 8 h: same source.</summary>
    public const double FactorVIIILatePercentPerHour = (8.5 - 5.2) / 2;

    /// <summary>Spread of that loss from patient to patient, as a share of it (invented).</summary>
    public const double FactorVIIISpread = 0.25;

    /// <summary>Change of fibrinogen in percent a day and its spread (invented; published as stable for 24 h and longer).</summary>
    public const double FibrinogenPercentPerDay = -1.0;

    /// <inheritdoc cref="FibrinogenPercentPerDay"/>
    public const double FibrinogenPercentPerDaySpread = 1.0;

    /// <summary>Change of D-dimer in percent a day and its spread (invented; published as stable for 24 h and longer).</summary>
    public const double DDimerPercentPerDay = -2.0;

    /// <inheritdoc cref="DDimerPercentPerDay"/>
    public const double DDimerPercentPerDaySpread = 2.0;

    /// <summary>How each analyte is measured. The INR is computed from the PT, not measured.</summary>
    public static readonly ImmutableArray<Assay> Assays =
    [
        new("PT", "s", 1, 1.2, 0.8, "PT-2601", "", 0),
        new("INR", "{INR}", 1, 0, 0, "PT-2601", "", 0),
        new("aPTT", "s", 1, 1.9, 1.0, "AP-2602", "", 0),
        new("FBG", "g/L", 2, 3.0, 1.5, "FB-2603", "CAL-FBG-1", 0),
        new("FVIII", "%", 0, 3.2, 1.5, "F8-2604", "CAL-F8-1", 0),
        new("DD", "mg/L{FEU}", 2, 4.0, 2.0, "DD-2605", "CAL-DD-1", 0.27m),
    ];

    /// <summary>
    /// Two levels of each control and a bridging plasma. Allowed: three between-run SD around the target. Ranges in INR follow
    /// from those in seconds.
    /// </summary>
    public static readonly ImmutableArray<ControlMaterial> Controls =
    [
        new("QC-1", "PT", "s", 12.4m, 5.4m, 1, 1.2),
        new("QC-2", "PT", "s", 29.0m, 5.4m, 1, 1.2),
        new("BRIDGE", "PT", "s", 14.6m, 0m, 1, 1.2),
        new("QC-1", "INR", "{INR}", 1.0m, 12.0m, 1, 1.2),
        new("QC-2", "INR", "{INR}", 2.5m, 8.0m, 1, 1.2),
        new("BRIDGE", "INR", "{INR}", 2.4m, 0m, 1, 1.2),
        new("QC-1", "aPTT", "s", 30.0m, 6.3m, 1, 1.9),
        new("QC-2", "aPTT", "s", 64.0m, 6.3m, 1, 1.9),
        new("BRIDGE", "aPTT", "s", 37.0m, 0m, 1, 1.9),
        new("QC-1", "FBG", "g/L", 2.80m, 12.0m, 2, 3.0),
        new("QC-2", "FBG", "g/L", 1.10m, 12.0m, 2, 3.0),
        new("BRIDGE", "FBG", "g/L", 2.60m, 0m, 2, 3.0),
        new("QC-1", "FVIII", "%", 98m, 12.0m, 0, 3.2),
        new("QC-2", "FVIII", "%", 32m, 13.0m, 0, 3.2),
        new("BRIDGE", "FVIII", "%", 91m, 0m, 0, 3.2),
        new("QC-1", "DD", "mg/L{FEU}", 0.55m, 18.0m, 2, 4.0),
        new("QC-2", "DD", "mg/L{FEU}", 2.40m, 18.0m, 2, 4.0),
        new("BRIDGE", "DD", "mg/L{FEU}", 0.81m, 0m, 2, 4.0),
    ];

    /// <summary>Groups in the order of their draws, with their time points and what is tested at each.</summary>
    public static readonly ImmutableArray<RoutineGroup> Groups =
    [
        new(
            "none",
            "N",
            PerDay: 4,
            OnTheLastDay: 4,
            [
                new("A", "baseline", "BL", 0, ["PT", "aPTT", "FBG", "FVIII", "DD"]),
                new("B", "4 h", "4H", 4, ["aPTT"]),
                new("C", "6 h", "6H", 6, ["aPTT", "FVIII"]),
                new("D", "8 h", "8H", 8, ["aPTT", "FVIII"]),
                new("E", "12 h", "12H", 12, ["PT", "aPTT", "FBG", "DD"]),
                new("F", "24 h", "24H", 24, ["PT", "FBG", "DD"]),
            ]
        ),
        new(
            "vka",
            "V",
            PerDay: 6,
            OnTheLastDay: 7,
            [
                new("A", "baseline", "BL", 0, ["PT", "INR"]),
                new("B", "12 h", "12H", 12, ["PT", "INR"]),
                new("C", "24 h", "24H", 24, ["PT", "INR"]),
            ]
        ),
        new(
            "ufh",
            "H",
            PerDay: 4,
            OnTheLastDay: 4,
            [
                new("A", "baseline", "BL", 0, ["aPTT"]),
                new("B", "4 h", "4H", 4, ["aPTT"]),
                new("C", "6 h", "6H", 6, ["aPTT"]),
                new("D", "8 h", "8H", 8, ["aPTT"]),
                new("E", "12 h", "12H", 12, ["aPTT"]),
            ]
        ),
    ];

    /// <summary>Midnight of each collection day.</summary>
    public static readonly ImmutableArray<DateTimeOffset> Days =
    [
        .. new[] { 13, 14, 15, 16, 17, 20, 21, 22, 23, 24 }.Select(day => new DateTimeOffset(
            2026,
            4,
            day,
            0,
            0,
            0,
            TimeSpan.FromHours(-4)
        )),
    ];
}

/// <summary>A patient group, its draws on each collection day and the tubes of each draw.</summary>
internal sealed record RoutineGroup(
    string Id,
    string Letter,
    int PerDay,
    int OnTheLastDay,
    ImmutableArray<RoutinePlannedTube> Tubes
)
{
    /// <summary>How many of its specimens are collected on a day, given by its number from 0.</summary>
    public int CountOn(int day) => day == RoutineScenario.Days.Length - 1 ? OnTheLastDay : PerDay;
}

/// <summary>What the protocol asks of one tube.</summary>
internal sealed record RoutinePlannedTube(
    string Letter,
    string TimePoint,
    string RunSuffix,
    int Hours,
    ImmutableArray<string> Analytes
)
{
    /// <summary>Code of the person on duty at that hour: the second in the evening.</summary>
    public string Operator => Hours == 12 ? "LS2" : "LS1";
}
