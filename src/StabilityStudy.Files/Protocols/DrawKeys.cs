using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of "draw".</summary>
internal static class DrawKeys
{
    /// <summary>Two temperatures; declared before the keys that are written so.</summary>
    internal static ValueForm<CelsiusRange> Celsius { get; } =
        Interval(NumberRange.Celsius, allowEqual: true)
            .As(new CelsiusRange(0, 0), range => new CelsiusRange(range.Lowest, range.Highest));

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Tube = Table.Add("tube", Required, Text, "the tube", "\"2.7 mL, plastic, one volume of citrate to nine of blood\"");
    public static readonly Key<decimal> CitratePercent = Table.Add("citrate_percent", Required, Number(NumberRange.Citrate), "concentration of its trisodium citrate, percent", "3.2");
    public static readonly Key<ImmutableArray<string>> Devices = Table.Add("devices", Optional, EachOnce(Texts, device => $"The device \"{device}\" stands twice."), "devices that may be used, as specimens.csv names them; any when not given", "[\"straight needle\", \"winged set\"]");
    public static readonly Key<DiscardTubeRule> DiscardTube = Table.Add("discard_tube", Required, Word(FileWords.DiscardTubeRules), "when a discard tube, of citrate or plain, is filled first; for factor assays too the laboratory states its choice", "\"before a winged set\"");
    public static readonly Key<DrawOrder> Order = Table.Add("order", Required, Word(FileWords.DrawOrders), "place in the order of draw", "\"first, or after a blood culture\"");
    public static readonly Key<(int Lowest, int Highest)> Inversions = Table.Add("inversions", Required, Interval(NumberRange.Inversions, allowEqual: true).As<(int, int)>(default, range => (decimal.ToInt32(range.Lowest), decimal.ToInt32(range.Highest))), "fewest and most complete gentle inversions of a tube", "[3, 5]");
    public static readonly Key<CelsiusRange?> Transport = Table.Add("transport_celsius", Optional, Celsius.OrNothing(), "lowest and highest temperature on the way to the laboratory, °C; never on ice", "[15, 25]");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where these rules come from", "\"common practice\"");
    // csharpier-ignore-end

    public static DrawRules Read(TomlTable table)
    {
        var inversions = table.Read(Inversions);
        return new(
            Tube: table.Read(Tube),
            CitratePercent: table.Read(CitratePercent),
            DiscardTube: table.Read(DiscardTube),
            Order: table.Read(Order),
            FewestInversions: inversions.Lowest,
            MostInversions: inversions.Highest,
            Source: table.Read(Source)
        )
        {
            Devices = table.Read(Devices),
            Transport = table.Read(Transport),
        };
    }
}

/// <summary>The keys of "spin" in the protocol.</summary>
internal static class SpinKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly SpinConditions Conditions = new(Table);
    public static readonly Key<decimal?> PlateletsBelow = Table.Add("platelets_below", Optional, Number(NumberRange.AboveZero).OrNone(), "fewer residual platelets than this are left in the plasma, 10⁹/L", "10");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where these rules come from", "\"common practice\"");
    // csharpier-ignore-end

    public static SpinRules Read(TomlTable table) =>
        new(
            RelativeForce: table.Read(Conditions.RelativeForce),
            Duration: table.Read(Conditions.Duration),
            Spins: table.Read(Conditions.Spins),
            Source: table.Read(Source)
        )
        {
            Celsius = table.Read(Conditions.Celsius),
            PlateletsBelow = table.Read(PlateletsBelow),
        };
}

/// <summary>The keys of "freezing".</summary>
internal static class FreezingKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<TimeSpan> Within = Table.Add("within", Required, LongDuration, "longest time from collection to freezing; a portion frozen later is left out", "\"4 h\"");
    public static readonly Key<CelsiusRange> ThawCelsius = Table.Add("thaw_celsius", Required, DrawKeys.Celsius, "lowest and highest temperature of the thaw, °C", "[36, 38]");
    public static readonly Key<TimeSpan> ThawFor = Table.Add("thaw_for", Required, LongDuration, "how long portions are thawed", "\"5 min\"");
    public static readonly Key<TimeSpan?> TestWithin = Table.Add("test_within", Optional, LongDuration.OrNone(), "longest time from thawing to the test; a portion tested later is left out; not where time counts from thawing", "\"1 h\"");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where these rules come from", "\"common practice\"");
    // csharpier-ignore-end

    public static FreezingRules Read(TomlTable table) =>
        new(
            Within: table.Read(Within),
            ThawCelsius: table.Read(ThawCelsius),
            ThawFor: table.Read(ThawFor),
            Source: table.Read(Source)
        )
        {
            TestWithin = table.Read(TestWithin),
        };
}
