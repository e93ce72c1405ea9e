namespace StabilityStudy.Core.Protocol;

/// <summary>The state in which a tube waits.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="State">Whole blood, spun on cells, or separated plasma.</param>
/// <param name="Cap">Whether the tube stays closed.</param>
/// <param name="LowestCelsius">Lowest temperature, °C.</param>
/// <param name="HighestCelsius">Highest temperature, °C.</param>
/// <param name="SpinToTest">Longest time from spinning to the test; null when storage begins after spinning.</param>
public sealed record Storage(
    string Id,
    StorageState State,
    Cap Cap,
    decimal LowestCelsius,
    decimal HighestCelsius,
    TimeSpan? SpinToTest
)
{
    /// <summary>Time that the bench needs from the spin to the test, by which a tube is spun before its window ends; null where not stated.</summary>
    public TimeSpan? SpinTakes { get; init; }

    /// <summary>How tubes travel while they wait, in the words of the facility; null where they stay where they are.</summary>
    public string? Transport { get; init; }
}

/// <summary>What is in the waiting tube.</summary>
public enum StorageState
{
    /// <summary>Unspun blood; spinning ends this storage.</summary>
    WholeBlood,

    /// <summary>Plasma above the cells after spinning.</summary>
    SpunOnCells,

    /// <summary>Plasma taken off the cells.</summary>
    SeparatedPlasma,
}

/// <summary>Whether the waiting tube is closed.</summary>
public enum Cap
{
    /// <summary>Open to the air.</summary>
    Open,

    /// <summary>Closed.</summary>
    Closed,
}
