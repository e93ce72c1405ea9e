namespace StabilityStudy.Core.Protocol;

/// <summary>How specimens are to be drawn and brought to the laboratory.</summary>
/// <param name="Tube">The tube, in the words of the facility.</param>
/// <param name="CitratePercent">Concentration of its trisodium citrate, percent.</param>
/// <param name="DiscardTube">Before which draws a discard tube, of citrate or plain, is filled first.</param>
/// <param name="Order">What may be drawn before, in the same puncture.</param>
/// <param name="FewestInversions">Fewest complete gentle inversions of a tube.</param>
/// <param name="MostInversions">Most of them.</param>
/// <param name="Source">Where these rules come from.</param>
public sealed record DrawRules(
    string Tube,
    decimal CitratePercent,
    DiscardTubeRule DiscardTube,
    DrawOrder Order,
    int FewestInversions,
    int MostInversions,
    string Source
)
{
    /// <summary>The devices with which specimens may be drawn, as specimens.csv names them; empty where any may be used.</summary>
    public ImmutableArray<string> Devices { get; init; } = [];

    /// <summary>Lowest and highest temperature on the way to the laboratory, °C; null when not limited.</summary>
    public CelsiusRange? Transport { get; init; }

    /// <summary>
    /// Whether a device is a winged set: its tubing holds air, which takes the place of blood in the first tube. The word of
    /// the trade, or the everyday one, stands somewhere in the device's name.
    /// </summary>
    public static bool IsWingedSet(string device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return device.Contains("winged", StringComparison.OrdinalIgnoreCase)
            || device.Contains("butterfly", StringComparison.OrdinalIgnoreCase);
    }
}

/// <summary>Before which draws a discard tube is filled. The zero member asks for most.</summary>
public enum DiscardTubeRule
{
    /// <summary>Before every draw.</summary>
    Always,

    /// <summary>Before a draw with a winged set.</summary>
    BeforeWingedSet,

    /// <summary>Before none; the facility's own choice.</summary>
    Never,
}

/// <summary>What may be drawn before the citrate tubes in the same puncture. The zero member allows least.</summary>
public enum DrawOrder
{
    /// <summary>Nothing but a discard tube.</summary>
    First,

    /// <summary>A blood culture and a discard tube.</summary>
    FirstOrAfterBloodCulture,
}

/// <summary>Two temperatures, °C.</summary>
/// <param name="Lowest">The lowest.</param>
/// <param name="Highest">The highest.</param>
public sealed record CelsiusRange(decimal Lowest, decimal Highest)
{
    /// <summary>Whether another range lies within this one.</summary>
    public bool Holds(CelsiusRange other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.Lowest >= Lowest && other.Highest <= Highest;
    }
}

/// <summary>How tubes are to be spun.</summary>
/// <param name="RelativeForce">Relative centrifugal force, × g.</param>
/// <param name="Duration">How long.</param>
/// <param name="Spins">How often the plasma is spun: 1 or 2.</param>
/// <param name="Source">Where these rules come from.</param>
public sealed record SpinRules(int RelativeForce, TimeSpan Duration, int Spins, string Source)
{
    /// <summary>Common practice and the processing guideline of 2021, as summarized by a secondary page: fewer platelets than this are left, 10⁹/L.</summary>
    public const decimal UsualPlateletsBelow = 10;

    /// <summary>Temperature of the centrifuge, °C; null when not limited.</summary>
    public CelsiusRange? Celsius { get; init; }

    /// <summary>Fewer residual platelets than this may be in the plasma, 10⁹/L; null when the protocol does not say.</summary>
    public decimal? PlateletsBelow { get; init; }
}

/// <summary>How plasma is to be frozen and thawed.</summary>
/// <param name="Within">Longest time from collection to freezing.</param>
/// <param name="ThawCelsius">Lowest and highest temperature of the thaw, °C.</param>
/// <param name="ThawFor">How long it is thawed.</param>
/// <param name="Source">Where these rules come from.</param>
public sealed record FreezingRules(
    TimeSpan Within,
    CelsiusRange ThawCelsius,
    TimeSpan ThawFor,
    string Source
)
{
    /// <summary>Longest time from thawing to the test; null where the time after thawing is what is studied.</summary>
    public TimeSpan? TestWithin { get; init; }
}
