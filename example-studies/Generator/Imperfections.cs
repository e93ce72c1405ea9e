namespace ExampleStudies.Generator;

/// <summary>
/// What goes wrong in every real study, put in on purpose at fixed tubes: each is described in the README of the example and,
/// where a laboratory would have noticed it, in its study.toml.
/// </summary>
internal static class Imperfections
{
    private const string ClottedTube = "N-011-C";
    private const string ShortTube = "H-023-C";
    private const string LateTube = "N-030-D";
    private const string MixedUpTube = "N-027-D";
    private const string ChilledTube = "N-017-B";

    /// <summary>The neighbor in the rack that was sampled in place of the mixed-up tube.</summary>
    private const string NeighborTube = "N-026-D";

    private const int ShortFillPercent = 82;
    private const int LateMinutes = 50;

    /// <summary>Too much citrate for the blood in a short tube prolongs the aPTT (size invented).</summary>
    private const double ShortFillFactor = 1.05;

    /// <summary>Cold activates whole blood and shortens the aPTT (size invented).</summary>
    private const double ChilledFactor = 0.96;

    /// <summary>The tube as it really was: clotted, short, late, or undisturbed.</summary>
    public static Tube Disturb(Tube tube) =>
        tube.Code switch
        {
            ClottedTube => tube with { Clotted = true },
            ShortTube => tube with { FillPercent = ShortFillPercent },
            LateTube => TestedLate(tube),
            _ => tube,
        };

    /// <summary>Code of the tube that the analyzer sampled for this result; its own but for the mix-up.</summary>
    public static string TubeSampledFor(Tube tube) =>
        tube.Code switch
        {
            MixedUpTube => NeighborTube,
            var ownTube => ownTube,
        };

    /// <summary>The factor by which what went wrong changes the clotting time.</summary>
    public static double FactorOf(Tube tube) =>
        tube.Code switch
        {
            ShortTube => ShortFillFactor,
            ChilledTube => ChilledFactor,
            _ => 1,
        };

    /// <summary>What the operator wrote beside the result. Nobody noticed the mix-up.</summary>
    public static string RemarkOn(Tube tube) =>
        tube.Code switch
        {
            ClottedTube => "no result: clot seen when the tube was opened",
            ShortTube => "short fill",
            LateTube => "analyzer stopped for a jam; tested late",
            ChilledTube => "found in the refrigerated rack",
            _ => "",
        };

    private static Tube TestedLate(Tube tube)
    {
        var testedAt = tube.Patient.CollectedAt.AddHours(tube.Plan.Hours).AddMinutes(LateMinutes);
        return tube with { TestedAt = testedAt, SpunAt = testedAt - (tube.TestedAt - tube.SpunAt) };
    }
}
