using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>How specimens are drawn, spun, kept and thawed: as the protocol plans it, and as study.toml says it was done.</summary>
internal static class HandlingDefinitions
{
    /// <summary>What the protocol plans, each with its source; nothing where it does not say.</summary>
    public static IEnumerable<Definition> Planned(StudyProtocol protocol)
    {
        if (protocol.Draw is { } draw)
        {
            yield return new("Draw", Draw(draw));
        }

        if (protocol.Spin is { } spin)
        {
            yield return new(
                "Spinning",
                $"{Spun(spin.Spins, spin.RelativeForce, spin.Duration, spin.Celsius)}{(spin.PlateletsBelow is { } most ? $"; fewer than {NumberText.Plain(most)}\u00A0×\u00A010⁹/L platelets left in the plasma" : "")} ({spin.Source})."
            );
        }

        if (protocol.Freezing is { } freezing)
        {
            yield return new(
                "Freezing",
                $"within {DurationText.Format(freezing.Within)} of collection; thawed at {Celsius(freezing.ThawCelsius)} for {DurationText.Format(freezing.ThawFor)} and mixed gently{(freezing.TestWithin is { } within ? $", tested within {DurationText.Format(within)} of it" : "")}; never frozen again ({freezing.Source})."
            );
        }
    }

    /// <summary>The same in sentences, and what is common practice where the protocol does not say how specimens are drawn.</summary>
    public static IEnumerable<string> PlannedOrUsual(StudyProtocol protocol)
    {
        if (protocol.Draw is null)
        {
            yield return "Draw: the protocol does not say how. Common practice: one volume of 3.2 % citrate to nine of blood; citrate tubes first or after a blood culture; a discard tube, of citrate or plain, before a winged set; 3 to 5 complete gentle inversions; at room temperature, never on ice; plasma, never serum.";
        }

        foreach (var planned in Planned(protocol))
        {
            yield return $"{planned.Term}: {planned.Explanation}";
        }
    }

    /// <summary>What was done, as far as study.toml says it.</summary>
    public static IEnumerable<Definition> Done(StudyFacts facts)
    {
        if (facts.SpecimenSource is { } subjects)
        {
            yield return new(
                "Specimens",
                string.Join(
                    "; ",
                    new[] { subjects.Source, subjects.Selection, subjects.Ethics }.OfType<string>()
                )
            );
        }

        string?[] handling =
        [
            facts.CollectionTube is { } tube
                ? $"drawn into {tube.Name}, {NumberText.Plain(tube.CitratePercent)} % citrate"
                : null,
            facts.Spinning is { } spun
                ? $"{Spun(spun.Spins, spun.RelativeForce, spun.Duration, spun.Celsius)} in {spun.Centrifuge}{(spun.Platelets is { } count ? $", at most {NumberText.Plain(count)} × 10⁹/L platelets left" : "")}"
                : null,
            facts.Thawing is { } thawed
                ? $"thawed at {Celsius(thawed.Celsius)} for {DurationText.Format(thawed.Duration)} in {thawed.Device}"
                : null,
            .. facts.Temperatures.Select(item =>
                $"{item.Storage} at {Celsius(item.Celsius)} ({item.Device})"
            ),
        ];
        if (string.Join("; ", handling.OfType<string>()) is { Length: > 0 } done)
        {
            yield return new("As done", done);
        }

        string?[] money =
        [
            facts.Funding is { } funding ? "paid by " + funding : null,
            facts.Interests is { } interests ? "interests: " + interests : null,
        ];
        if (string.Join("; ", money.OfType<string>()) is { Length: > 0 } stated)
        {
            yield return new("Funding", stated);
        }
    }

    private static string Draw(DrawRules rules)
    {
        string?[] parts =
        [
            $"{rules.Tube}, {NumberText.Plain(rules.CitratePercent)} % citrate; plasma, never serum",
            rules.Devices.IsEmpty ? null : string.Join(" or ", rules.Devices),
            rules.DiscardTube switch
            {
                DiscardTubeRule.Always => "a discard tube first, of citrate or plain",
                DiscardTubeRule.BeforeWingedSet =>
                    "a discard tube, of citrate or plain, before a winged set",
                DiscardTubeRule.Never => "no discard tube",
            },
            rules.Order switch
            {
                DrawOrder.First => "citrate tubes first",
                DrawOrder.FirstOrAfterBloodCulture =>
                    "citrate tubes first, or after a blood culture",
            },
            $"{(rules.FewestInversions == rules.MostInversions ? "" : $"{NumberText.Count(rules.FewestInversions)} to ")}{NumberText.Count(rules.MostInversions)} complete gentle inversions",
            rules.Transport is { } range
                ? $"brought at {Celsius(range)}, never on ice"
                : "never on ice",
        ];
        return $"{string.Join("; ", parts.OfType<string>())} ({rules.Source}).";
    }

    internal static string Spun(int spins, int force, TimeSpan duration, CelsiusRange? celsius) =>
        $"{(spins == 2 ? "spun twice" : "spun once")} at {NumberText.Count(force)} × g for {DurationText.Format(duration)}{(celsius is null ? "" : " at " + Celsius(celsius))}";

    internal static string Celsius(CelsiusRange range) =>
        range.Lowest == range.Highest
            ? $"{NumberText.Plain(range.Lowest)} °C"
            : $"{NumberText.Plain(range.Lowest)} to {NumberText.Plain(range.Highest)} °C";
}
