using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>How specimens are drawn, spun, kept and thawed: as planned, and as it was done.</summary>
internal static class HandlingForms
{
    private static readonly ObjectForm<CelsiusRange> s_celsius = new("celsiusRange")
    {
        { "lowest", v => v.Lowest, Form.Exact },
        { "highest", v => v.Highest, Form.Exact },
    };

    public static readonly ObjectForm<DrawRules> DrawForm = new("drawRules")
    {
        { "tube", v => v.Tube, Form.Text },
        { "citratePercent", v => v.CitratePercent, Form.Exact },
        { "devices", v => v.Devices, Form.List(Form.Text).OrLeftOut() },
        { "discardTube", v => v.DiscardTube, Form.Word<DiscardTubeRule>() },
        { "order", v => v.Order, Form.Word<DrawOrder>() },
        { "fewestInversions", v => v.FewestInversions, Form.Count },
        { "mostInversions", v => v.MostInversions, Form.Count },
        { "transport", v => v.Transport, s_celsius.OrLeftOut() },
        { "source", v => v.Source, Form.Text },
    };

    public static readonly ObjectForm<SpinRules> SpinForm = new("spinRules")
    {
        { "relativeForce", v => v.RelativeForce, Form.Count },
        { "duration", v => v.Duration, Form.Duration },
        { "spins", v => v.Spins, Form.Count },
        { "celsius", v => v.Celsius, s_celsius.OrLeftOut() },
        { "plateletsBelow", v => v.PlateletsBelow, Form.Exact.OrLeftOut() },
        { "source", v => v.Source, Form.Text },
    };

    public static readonly ObjectForm<FreezingRules> FreezingForm = new("freezingRules")
    {
        { "within", v => v.Within, Form.Duration },
        { "thawCelsius", v => v.ThawCelsius, s_celsius },
        { "thawFor", v => v.ThawFor, Form.Duration },
        { "testWithin", v => v.TestWithin, Form.Duration.OrLeftOut() },
        { "source", v => v.Source, Form.Text },
    };

    public static readonly ObjectForm<CollectionTube> TubeForm = new("collectionTube")
    {
        { "name", v => v.Name, Form.Text },
        { "citratePercent", v => v.CitratePercent, Form.Exact },
    };

    public static readonly ObjectForm<Spinning> SpinningForm = new("spinning")
    {
        { "centrifuge", v => v.Centrifuge, Form.Text },
        { "relativeForce", v => v.RelativeForce, Form.Count },
        { "duration", v => v.Duration, Form.Duration },
        { "spins", v => v.Spins, Form.Count },
        { "celsius", v => v.Celsius, s_celsius.OrLeftOut() },
        { "platelets", v => v.Platelets, Form.Exact.OrLeftOut() },
    };

    public static readonly ObjectForm<StorageTemperature> TemperatureForm = new(
        "storageTemperature"
    )
    {
        { "storage", v => v.Storage, Form.Text },
        { "celsius", v => v.Celsius, s_celsius },
        { "device", v => v.Device, Form.Text },
    };

    public static readonly ObjectForm<Thawing> ThawingForm = new("thawing")
    {
        { "celsius", v => v.Celsius, s_celsius },
        { "duration", v => v.Duration, Form.Duration },
        { "device", v => v.Device, Form.Text },
    };

    public static readonly ObjectForm<SpecimenSource> SourceForm = new("specimenSource")
    {
        { "source", v => v.Source, Form.Text.OrLeftOut() },
        { "selection", v => v.Selection, Form.Text.OrLeftOut() },
        { "ethics", v => v.Ethics, Form.Text.OrLeftOut() },
    };
}
