using StabilityStudy.Core.Study;
using StabilityStudy.Files.Protocols;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys of "collection_tube".</summary>
internal static class CollectionTubeKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "the tube", "\"2.7 mL, plastic, one volume of citrate to nine of blood\"");
    public static readonly Key<decimal> CitratePercent = Table.Add("citrate_percent", Required, Number(NumberRange.Citrate), "concentration of its trisodium citrate, percent", "3.2");
    // csharpier-ignore-end

    public static CollectionTube Read(TomlTable table) =>
        new(table.Read(Name), table.Read(CitratePercent));
}

/// <summary>The keys of "spinning".</summary>
internal static class SpinningKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Centrifuge = Table.Add("centrifuge", Required, Text, "the centrifuge", "\"C-2, swing-out rotor\"");
    public static readonly SpinConditions Conditions = new(Table);
    public static readonly Key<decimal?> Platelets = Table.Add("platelets", Optional, Number(NumberRange.Platelets).OrNone(), "most residual platelets counted in the plasma, 10⁹/L", "6");
    // csharpier-ignore-end

    public static Spinning Read(TomlTable table) =>
        new(
            Centrifuge: table.Read(Centrifuge),
            RelativeForce: table.Read(Conditions.RelativeForce),
            Duration: table.Read(Conditions.Duration),
            Spins: table.Read(Conditions.Spins)
        )
        {
            Celsius = table.Read(Conditions.Celsius),
            Platelets = table.Read(Platelets),
        };
}

/// <summary>The keys of a temperature.</summary>
internal static class TemperatureKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Storage = Table.Add("storage", Required, Text, "storage of the protocol", "\"wb-rt\"");
    public static readonly Key<CelsiusRange> Celsius = Table.Add("celsius", Required, DrawKeys.Celsius, "lowest and highest temperature recorded, °C", "[19.2, 23.8]");
    public static readonly Key<string> Device = Table.Add("device", Required, Text, "with what it was recorded", "\"logger L-7, every 5 min, calibrated 2026-01-15\"");
    // csharpier-ignore-end

    public static StorageTemperature Read(TomlTable table) =>
        new(table.Read(Storage), table.Read(Celsius), table.Read(Device));
}

/// <summary>The keys of "thawing".</summary>
internal static class ThawingKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<CelsiusRange> Celsius = Table.Add("celsius", Required, DrawKeys.Celsius, "lowest and highest temperature recorded, °C", "[36.6, 37.3]");
    public static readonly Key<TimeSpan> Duration = Table.Add("duration", Required, LongDuration, "how long", "\"5 min\"");
    public static readonly Key<string> Device = Table.Add("device", Required, Text, "in what portions were thawed", "\"water bath WB-1, thermometer T-4\"");
    // csharpier-ignore-end

    public static Thawing Read(TomlTable table) =>
        new(table.Read(Celsius), table.Read(Duration), table.Read(Device));
}

/// <summary>The keys of "subjects".</summary>
internal static class SubjectKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string?> Source = Table.Add("source", Optional, OptionalText, "where specimens come from", "\"patients of the hospital with a coagulation test ordered\"");
    public static readonly Key<string?> Selection = Table.Add("selection", Optional, OptionalText, "how they were chosen", "\"in the order of arrival, by the group's rule, before any result\"");
    public static readonly Key<string?> Ethics = Table.Add("ethics", Optional, OptionalText, "decision of an ethics committee and consent, or why local rules need neither", "\"committee decision 2026-014; written consent\"");
    // csharpier-ignore-end

    public static SpecimenSource Read(TomlTable table) =>
        new(table.Read(Source), table.Read(Selection), table.Read(Ethics));
}
