using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Study;

/// <summary>The tube into which specimens were drawn.</summary>
/// <param name="Name">The tube, in the words of the facility.</param>
/// <param name="CitratePercent">Concentration of its trisodium citrate, percent.</param>
public sealed record CollectionTube(string Name, decimal CitratePercent)
{
    /// <summary>Common practice: 3.2 % citrate, one volume to nine of blood.</summary>
    public const decimal UsualCitratePercent = 3.2m;
}

/// <summary>How tubes were spun.</summary>
/// <param name="Centrifuge">The centrifuge, in the words of the facility.</param>
/// <param name="RelativeForce">Relative centrifugal force, × g.</param>
/// <param name="Duration">How long.</param>
/// <param name="Spins">How often the plasma was spun.</param>
public sealed record Spinning(string Centrifuge, int RelativeForce, TimeSpan Duration, int Spins)
{
    /// <summary>Most residual platelets that were counted, 10⁹/L; null when none were counted.</summary>
    public decimal? Platelets { get; init; }

    /// <summary>Lowest and highest temperature of the centrifuge, °C; null when not recorded.</summary>
    public CelsiusRange? Celsius { get; init; }
}

/// <summary>Lowest and highest temperature at which tubes waited.</summary>
/// <param name="Storage">Key of the storage.</param>
/// <param name="Celsius">Lowest and highest temperature recorded, °C.</param>
/// <param name="Device">With what it was recorded.</param>
public sealed record StorageTemperature(string Storage, CelsiusRange Celsius, string Device);

/// <summary>How frozen plasma was thawed.</summary>
/// <param name="Celsius">Lowest and highest temperature recorded, °C.</param>
/// <param name="Duration">How long.</param>
/// <param name="Device">In what it was thawed.</param>
public sealed record Thawing(CelsiusRange Celsius, TimeSpan Duration, string Device);

/// <summary>Whose specimens they are, how they were chosen, and by which leave. Each is null where it is not stated.</summary>
/// <param name="Source">Where specimens come from.</param>
/// <param name="Selection">How they were chosen.</param>
/// <param name="Ethics">Decision of an ethics committee, consent, or why local rules need neither.</param>
public sealed record SpecimenSource(string? Source, string? Selection, string? Ethics);
