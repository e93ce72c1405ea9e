using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>Plans and facts of draw, spinning, storage and thawing that raise a query.</summary>
internal static class HandlingCases
{
    private const string P = "protocol.toml";
    private const string S = "study.toml";

    public static IEnumerable<BrokenInput> All => [.. Plans, .. Facts];

    private static IEnumerable<BrokenInput> Plans =>
        [
            Lax(
                "draw.citrate_percent",
                Draw("citrate_percent = 3.2", "citrate_percent = 3.8"),
                "3.8 %"
            ),
            Lax("draw.inversions", Draw("[3, 5]", "[2, 5]"), "3 to 5 times"),
            Lax("draw.inversions", Draw("[3, 5]", "[3, 8]"), "more break cells"),
            Lax(
                "draw.discard_tube",
                Draw("\"before a winged set\"", "\"never\""),
                "first tube short"
            ),
            Lax("draw.transport_celsius", Draw("[15, 25]", "[2, 25]"), "room temperature"),
            Lax(
                "spin.platelets_below",
                Spin("platelets_below = 10", "platelets_below = 12"),
                "fewer than 10"
            ),
            Plan(
                Draw("\"common practice\"", "\"from memory\""),
                "source-from-memory",
                "draw.source",
                "from memory: draw"
            ) with
            {
                Severity = Severity.Attention,
            },
            Plan(
                Spin("\"common practice\"", "\"short\""),
                "source-too-short",
                "spin.source",
                "looked up: spin"
            ) with
            {
                Severity = Severity.Attention,
            },
            Plan(Draw("[3, 5]", "[5, 3]"), "out-of-range", "draw.inversions", "the lowest first"),
            Plan(Draw("[3, 5]", "[3, 4.5]"), "out-of-range", "draw.inversions", "a whole number"),
            Plan(
                Draw("\"first, or after a blood culture\"", "\"last\""),
                "unknown-word",
                "draw.order",
                "\"first\""
            ),
            Plan(Draw("citrate_percent = 3.2, ", ""), "missing-key", "draw.citrate_percent", "Add"),
            Plan(
                "freezing = { within = \"4 h\", thaw_celsius = [36, 38], thaw_for = \"5 min\", source = \"common practice\" }",
                "freezing-does-not-fit",
                "freezing",
                "No storage of the protocol is frozen"
            ),
        ];

    private static IEnumerable<BrokenInput> Facts =>
        [
            Fact(
                "collection_tube = { name = \"2.7 mL\", citrate_percent = 3.8 }",
                "citrate-not-as-planned",
                "collection_tube.citrate_percent",
                "usual are 3.2 %"
            ),
            Fact(
                "spinning = { centrifuge = \"C-2\", relative_force = 1500, duration = \"15 min\", platelets = 10 }",
                "residual-platelets",
                "spinning.platelets",
                "fewer than 10"
            ),
            Fact(
                "temperature = [{ storage = \"wb-rt\", celsius = [17.9, 25], device = \"logger\" }]",
                "temperature-not-as-planned",
                "temperature.celsius",
                "17.9 to 25 °C, planned 18 to 25 °C"
            ),
            Fact(
                "temperature = [{ storage = \"wb-rt\", celsius = [18, 25.1], device = \"logger\" }]",
                "temperature-not-as-planned",
                "temperature.celsius",
                "18 to 25.1 °C"
            ),
            Fact(
                "temperature = [{ storage = \"wb-r\", celsius = [18, 25], device = \"logger\" }]",
                "unknown-reference",
                "temperature.storage",
                "Did you mean \"wb-rt\""
            ) with
            {
                Severity = Severity.Stop,
            },
        ];

    public static string Draw(string from = "", string to = "") =>
        Changed(
            "draw = { tube = \"2.7 mL\", citrate_percent = 3.2, devices = [\"straight needle\", \"winged set\"], discard_tube = \"before a winged set\", order = \"first, or after a blood culture\", inversions = [3, 5], transport_celsius = [15, 25], source = \"common practice\" }",
            from,
            to
        );

    public static string Spin(string from = "", string to = "") =>
        Changed(
            "spin = { relative_force = 1500, duration = \"15 min\", celsius = [18, 25], platelets_below = 10, source = \"common practice\" }",
            from,
            to
        );

    private static string Changed(string text, string from, string to)
    {
        Assert.Contains(from, text, StringComparison.Ordinal);
        return from.Length == 0 ? text : text.Replace(from, to, StringComparison.Ordinal);
    }

    private static BrokenInput Plan(string line, string code, string key, string says) =>
        new(P, "minimum_days = 5", line + "\nminimum_days = 5", code, key, says);

    private static BrokenInput Lax(string key, string line, string says) =>
        Plan(line, "handling-lax", key, says) with
        {
            Severity = Severity.Attention,
        };

    private static BrokenInput Fact(string line, string code, string key, string says) =>
        new(S, "invented = true", line + "\ninvented = true", code, key, says)
        {
            Severity = Severity.Attention,
        };
}
