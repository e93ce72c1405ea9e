namespace StabilityStudy.Files.Units;

/// <summary>A unit that results are given in.</summary>
/// <param name="Name">Its name in UCUM.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Size">How many of the smallest unit of its kind it is.</param>
/// <param name="Spellings">How laboratories also write it.</param>
internal sealed record UnitOfQuantity(
    string Name,
    QuantityKind Kind,
    decimal Size,
    ImmutableArray<string> Spellings
);

/// <summary>What a unit measures. Results are converted within a kind alone.</summary>
internal enum QuantityKind
{
    /// <summary>Time.</summary>
    Time,

    /// <summary>A ratio of two times.</summary>
    Ratio,

    /// <summary>The international normalized ratio.</summary>
    NormalizedRatio,

    /// <summary>Percent, of activity against normal plasma.</summary>
    Percent,

    /// <summary>Mass in a volume.</summary>
    MassConcentration,

    /// <summary>D-dimer as the mass of fibrinogen that would give it.</summary>
    FibrinogenEquivalent,

    /// <summary>D-dimer as its own mass.</summary>
    DDimerUnits,

    /// <summary>International units in a volume.</summary>
    InternationalActivity,

    /// <summary>Units of a method's own in a volume.</summary>
    ArbitraryActivity,
}
