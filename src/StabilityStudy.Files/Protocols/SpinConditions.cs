using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys that tell how tubes are spun: of the protocol as they are to be, of study.toml as they were.</summary>
/// <param name="table">The table to which they are added, in this order.</param>
internal sealed class SpinConditions(KeyTable table)
{
    // csharpier-ignore-start
    public Key<int> RelativeForce { get; } = table.Add("relative_force", Required, Whole(100, 20_000), "relative centrifugal force, × g", "1500");
    public Key<TimeSpan> Duration { get; } = table.Add("duration", Required, LongDuration, "how long", "\"15 min\"");
    public Key<int> Spins { get; } = table.Add("spins", Optional, Whole(1, 2).Or(1), "2 where plasma is taken off and spun once more; 1 when not given", "2");
    public Key<CelsiusRange?> Celsius { get; } = table.Add("celsius", Optional, DrawKeys.Celsius.OrNothing(), "lowest and highest temperature of the centrifuge, °C", "[18, 25]");
    // csharpier-ignore-end
}
