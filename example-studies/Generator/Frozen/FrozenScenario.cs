namespace ExampleStudies.Generator.Frozen;

/// <summary>The invented world of the frozen example. Where a published figure stands behind a number it is named; all others are invented.</summary>
internal static class FrozenScenario
{
    /// <summary>Names the random streams.</summary>
    public const string Study = "frozen";

    /// <summary>Specimens collected on one day; eight days make 40.</summary>
    public const int PerDay = 5;

    /// <summary>Rise of the aPTT in percent a day: 0.8 % a month, frozen, Gomez Rioja and others, Clin Chem Lab Med 2025.</summary>
    public const double ApttPercentPerDay = 0.8 / 30;

    /// <summary>Rise of the aPTT by freezing and thawing itself, in percent (invented).</summary>
    public const double ApttPercentOnThawing = 1.0;

    /// <summary>Spread of the whole rise from plasma to plasma, in percent (invented).</summary>
    public const double ApttSpreadPercent = 1.0;

    /// <summary>Loss of factor VIII by freezing and thawing itself, in percent (invented).</summary>
    public const double FactorVIIIPercentOnThawing = 2.5;

    /// <summary>Loss of factor VIII in percent a day at −20 °C (invented; at −24 °C and below published as under 10 % in 3 months).</summary>
    public const double FactorVIIIPercentPerDay = 0.32;

    /// <summary>Spread of the whole loss from plasma to plasma, in percent (invented).</summary>
    public const double FactorVIIISpreadPercent = 1.5;

    /// <summary>How each analyte is measured.</summary>
    public static readonly ImmutableArray<Assay> Assays =
    [
        new("aPTT", "s", 1, 1.9, 1.0, "AP-2511", "", 0),
        new("FVIII", "%", 0, 3.2, 1.5, "F8-2511", "CAL-F8-1", 0),
    ];

    /// <summary>Two levels of each control, allowed three between-run SD around the target, and a bridging plasma kept at −70 °C.</summary>
    public static readonly ImmutableArray<ControlMaterial> Controls =
    [
        new("QC-1", "aPTT", "s", 30.0m, 6.3m, 1, 1.9),
        new("QC-2", "aPTT", "s", 64.0m, 6.3m, 1, 1.9),
        new("BRIDGE", "aPTT", "s", 37.0m, 0m, 1, 1.9),
        new("QC-1", "FVIII", "%", 98m, 12.0m, 0, 3.2),
        new("QC-2", "FVIII", "%", 32m, 13.0m, 0, 3.2),
        new("BRIDGE", "FVIII", "%", 91m, 0m, 0, 3.2),
    ];

    /// <summary>Portions of one plasma: fresh, and one for each time point.</summary>
    public static readonly ImmutableArray<FrozenPortion> Portions =
    [
        new("A", "baseline", "FRESH", 0),
        new("B", "7 d", "7D", 7),
        new("C", "14 d", "14D", 14),
    ];

    /// <summary>Midnight of each collection day.</summary>
    public static readonly ImmutableArray<DateTimeOffset> Days =
    [
        .. new[] { 12, 13, 14, 15, 19, 20, 21, 22 }.Select(day => new DateTimeOffset(
            2026,
            1,
            day,
            0,
            0,
            0,
            TimeSpan.FromHours(-5)
        )),
    ];
}

/// <summary>A portion of each plasma: its letter, its time point as written in the results, the end of its run code, days frozen.</summary>
internal sealed record FrozenPortion(string Letter, string TimePoint, string RunSuffix, int Days);
