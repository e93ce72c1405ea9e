using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>Protocols that can be carried out and ask for less than is usual.</summary>
internal static class LaxProtocolCases
{
    private const string P = "protocol.toml";

    public static IEnumerable<BrokenInput> All =>
        [
            new(
                P,
                "cv_percent = { between_run = 2.5 }\n",
                "",
                "between-run-cv-not-stated",
                "analyte.cv_percent",
                "aPTT"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -8,
            },
            new(
                P,
                "fill_percent_min = 90, hematocrit_percent_max = 55, clot = \"reject\"",
                "fill_percent_min = 80, clot = \"accept\"",
                "eligibility-lax",
                "eligibility",
                "a fill of 80 %, any hematocrit, clots"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "celsius = [18, 25]",
                "celsius = [2, 45]",
                "temperature-range-wide",
                "storage.celsius",
                "from 2 to 45"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "baseline_within = \"1 h\"",
                "baseline_within = \"100 min\"",
                "late-baseline",
                "baseline_within",
                "a quarter of the first delay"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"\nconfidence = 0.90",
                "kind = \"decision-level\"\nlimits = { aPTT = \"aptt-bias\" }\nlevels = [40.0]\nconfidence = 0.90",
                "level-not-judged",
                "criterion.levels",
                "left out: 60"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 2,
                Along = ["individual-only"],
            },
            new(
                P,
                "name = \"No anticoagulant\"",
                "name = \"On warfarin\"",
                "mean-without-levels",
                "analyte.id",
                "group none: criterion \"mean\" judges the mean, and no criterion looks at decision levels although by code and name"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 4,
            },
            new(
                P,
                "decision_levels = [40.0, 60.0]",
                "decision_levels = [40.0, 60.0]\nplanned_ranges = [{ group = \"none\", range = [25, 90] }]",
                "mean-without-levels",
                "analyte.id",
                "the planned range from 25 to 90 is wider than threefold"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -9,
            },
            new(
                P,
                "late = \"30 min\"",
                "late = \"31 min\"",
                "wide-tolerance",
                "tolerance",
                "Shorten"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "early = \"0 min\", late = \"30 min\"",
                "early = \"91 min\", late = \"30 min\"",
                "windows-overlap",
                "tolerance",
                "apart"
            ),
            new(
                P,
                "early = \"0 min\"",
                "early = \"31 min\"",
                "wide-tolerance",
                "tolerance",
                "quarter"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "baseline_within = \"1 h\"",
                "baseline_within = \"61 min\"",
                "late-baseline",
                "baseline_within",
                "within one hour"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "baseline_within = \"1 h\"",
                "baseline_within = \"4 h\"",
                "baseline-beyond-standard-window",
                "baseline_within",
                "4 h (aPTT)"
            ),
            new(
                P,
                "window_step = \"30 min\"",
                "window_step = \"7 h\"",
                "window-step-too-long",
                "window_step",
                "30 min"
            ),
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nleft_out_percent_max = 26",
                "much-may-be-left-out",
                "left_out_percent_max",
                "at most 25 %"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 1,
            },
            new(
                P,
                "confidence = 0.90",
                "confidence = 0.89",
                "low-confidence",
                "criterion.confidence",
                "usual 0.90"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "confidence = 0.95",
                "confidence = 0.90",
                "low-confidence",
                "criterion.confidence",
                "usual 0.95"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "share_percent_min = 85",
                "share_percent_min = 84",
                "low-share",
                "criterion.share_percent_min",
                "15 of 100"
            )
            {
                Severity = Severity.Attention,
            },
            new(P, "percent = 7.5", "percent = 21", "wide-limit", "limit.percent", "above 15 %")
            {
                Severity = Severity.Attention,
                Along = ["bias-limit-not-below-individual"],
            },
            new(P, "percent = 15\n", "percent = 26\n", "wide-limit", "limit.percent", "above 25 %")
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "percent = 7.5",
                "percent = 15",
                "bias-limit-not-below-individual",
                "criterion.limits",
                "leave over"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 12,
            },
            new(
                P,
                "limits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "limits = { aPTT = \"aptt-each\" }\nscale = \"share\"",
                "bias-limit-is-individual",
                "criterion.limits",
                "limit of its own"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "scale = \"percent\"",
                "scale = \"percent\"\nrule = \"point only\"",
                "decided-by-estimate-alone",
                "criterion.rule",
                "controls no error"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 1,
            },
            new(
                P,
                "manufacturer_limit = { time = \"4 h\", document = \"instructions revision 3\" }\n",
                "",
                "manufacturer-limit-not-stated",
                "analyte.manufacturer_limit",
                "instructions for use"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -7,
            },
            new(
                P,
                "source = \"regulation\"",
                "source = \"-\"",
                "source-too-short",
                "limit.source",
                "limit aptt-each"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "document = \"instructions revision 3\"",
                "document = \"CHANGE: your instructions for use\"",
                "left-to-change",
                "analyte.manufacturer_limit.document",
                "still has the mark CHANGE:"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "document = \"instructions revision 3\"",
                "document = \"Example: instructions\"",
                "source-is-an-example",
                "analyte.manufacturer_limit",
                "manufacturer's limit of aPTT"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "source = \"regulation\"",
                "source = \"regulation, From memory\"",
                "source-from-memory",
                "limit.source",
                "limit aptt-each"
            )
            {
                Severity = Severity.Attention,
            },
        ];
}
