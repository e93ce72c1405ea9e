using StabilityStudy.Reporting.Report.Conduct;

namespace StabilityStudy.Reporting.Bench;

/// <summary>How the protocol says that specimens are drawn, brought, spun, frozen and thawed, as a sheet tells it beside what is done; empty where it does not say.</summary>
internal static class PlannedHandling
{
    /// <summary>What is to be known at the draw: " Invert 3 to 5 times, completely and gently."</summary>
    public static string AtTheDraw(StudyProtocol protocol)
    {
        if (protocol.Draw is not { } draw)
        {
            return "";
        }

        string?[] sentences =
        [
            draw.DiscardTube switch
            {
                DiscardTubeRule.Always =>
                    "Discard tube first: citrate or plain, never another additive.",
                DiscardTubeRule.BeforeWingedSet =>
                    "Winged set: a discard tube first, citrate or plain, never another additive.",
                DiscardTubeRule.Never => null,
            },
            draw.Order switch
            {
                DrawOrder.First => "Nothing else is drawn before.",
                DrawOrder.FirstOrAfterBloodCulture =>
                    "Only a blood culture may be drawn before: then write “culture” beside the time.",
            },
            $"Invert {Inversions(draw)} times, completely and gently.",
        ];
        return " " + string.Join(" ", sentences.OfType<string>());
    }

    /// <summary>How tubes come to the laboratory: " Bring them at 15 to 25 °C, never on ice."</summary>
    public static string OnTheWay(StudyProtocol protocol) =>
        protocol.Draw is not { } draw ? ""
        : draw.Transport is { } range
            ? $" Bring them at {HandlingDefinitions.Celsius(range)}, never on ice."
        : " Bring them at room temperature, never on ice.";

    /// <summary>"3 to 5".</summary>
    public static string Inversions(DrawRules draw) =>
        draw.FewestInversions == draw.MostInversions
            ? NumberText.Count(draw.MostInversions)
            : $"{NumberText.Count(draw.FewestInversions)} to {NumberText.Count(draw.MostInversions)}";

    /// <summary>" Spin once at 1500 × g for 15 min at 18 to 25 °C."</summary>
    public static string AtTheCentrifuge(StudyProtocol protocol) =>
        protocol.Spin is { } spin
            ? $" Spin: {HandlingDefinitions.Spun(spin.Spins, spin.RelativeForce, spin.Duration, spin.Celsius).Replace("spun ", "", StringComparison.Ordinal)}."
            : "";

    /// <summary>What is to be known before freezing and at the thaw.</summary>
    public static string AtTheFreezer(StudyProtocol protocol) =>
        protocol.Freezing is { } freezing
            ? $"Freeze within {DurationText.Format(freezing.Within)} of collection. Thaw one rack at a time at {HandlingDefinitions.Celsius(freezing.ThawCelsius)} for {DurationText.Format(freezing.ThawFor)}, mix gently{(freezing.TestWithin is { } within ? $", test within {DurationText.Format(within)} of the thaw" : "")}."
            : "Freeze within ____ h of collection. Thaw one rack at a time at ____ °C, mix, test within ____ h of the thaw, as your procedure says.";
}
