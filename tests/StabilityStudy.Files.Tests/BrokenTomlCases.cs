using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>Broken protocols and study facts.</summary>
internal static class BrokenTomlCases
{
    private const string P = "protocol.toml";
    private const string S = "study.toml";

    public static IEnumerable<BrokenInput> All => [.. Values, .. Protocols, .. Criteria, .. Facts];

    private static IEnumerable<BrokenInput> Values =>
        [
            new(P, "format = 1", "format = 2", "unsupported-format", "format", "format = 1"),
            new(P, "version = \"2\"", "version = ", "toml-syntax", null, "Correct the line"),
            new(P, "version = \"2\"", "version = \"2", "toml-syntax", null, "double quotes"),
            // Half a character, and a number above those of characters.
            new(P, "version = \"2\"", "version = \"\\uD800\"", "toml-syntax", null, "Correct"),
            new(P, "version = \"2\"", "version = \"\\U00110000\"", "toml-syntax", null, "Correct"),
            new(P, "version = \"2\"", "\"a\\uDC00\" = \"2\"", "toml-syntax", null, "Correct"),
            new(
                P,
                "version = \"2\"",
                "version = 2",
                "wrong-type",
                "version",
                "a text in double quotes"
            ),
            new(
                P,
                "version = \"2\"",
                "version = \" 2\"",
                "empty-text",
                "version",
                "without spaces"
            ),
            new(P, "version = \"2\"", "version = \"\"", "empty-text", "version", "Write the text"),
            new(
                P,
                "version = \"2\"",
                "version = \"a\\tb\"",
                "control-character",
                "version",
                "on one line"
            ),
            new(P, "version = \"2\"\n", "", "missing-key", "version", "Add \"version\"")
            {
                WholeFile = true,
            },
            new(
                P,
                "version = \"2\"",
                "version = \"2\"\nversion = \"3\"",
                "duplicate-key",
                "version",
                "line 3"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "version = \"2\"",
                "verison = \"2\"",
                "unknown-key",
                "verison",
                "Did you mean \"version\""
            )
            {
                Along = ["missing-key"],
            },
            new(
                P,
                "version = \"2\"",
                "version = \"2\"\nremarks = \"x\"",
                "unknown-key",
                "remarks",
                "Remove it"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "time_points = [\"6 h\"",
                "time_points = [6",
                "wrong-type",
                "time_points",
                "a text"
            ),
            new(
                P,
                "time_points = [\"6 h\"",
                "time_points = [\"6h\"",
                "not-a-duration",
                "time_points",
                "a space and a unit"
            ),
            new(
                P,
                "time_points = [\"6 h\", \"8 h\"]",
                "time_points = []",
                "empty-list",
                "time_points",
                "at least one"
            ),
            new(
                P,
                "time_points = [\"6 h\", \"8 h\"]",
                "time_points = \"6 h\"",
                "wrong-type",
                "time_points",
                "a list of durations"
            ),
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nlooks = 2",
                "looks-need-confidence",
                "criterion.confidence",
                "at least 0.95"
            )
            {
                LinesBelow = 36,
                Along = ["looks-need-confidence"],
            },
            new(P, "minimum_days = 5", "minimum_days = 5\nlooks = 3", "out-of-range", "looks", "2")
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 1",
                "out-of-range",
                "minimum_days",
                "from 2"
            ),
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5.5",
                "out-of-range",
                "minimum_days",
                "whole number"
            ),
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 0x5",
                "not-a-number",
                "minimum_days",
                "plain digits"
            ),
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 1_0",
                "not-a-number",
                "minimum_days",
                "plain digits"
            ),
            new(P, "percent = 7.5", "percent = +7.5", "not-a-number", "limit.percent", "plus sign"),
            new(
                P,
                "percent = 7.5",
                "percent = nan",
                "not-a-number",
                "limit.percent",
                "Write digits"
            ),
            new(
                P,
                "percent = 7.5",
                "percent = inf",
                "not-a-number",
                "limit.percent",
                "Write digits"
            ),
            new(
                P,
                "percent = 7.5",
                "percent = 7.5e0",
                "not-a-number",
                "limit.percent",
                "no exponent"
            ),
            new(P, "percent = 7.5", "percent = 100", "out-of-range", "limit.percent", "below 100"),
            new(
                P,
                "code = \"WB-RT-12\"",
                "code = \"" + new string('x', 61) + "\"",
                "unfit-code",
                "code",
                "60 characters"
            ),
            new(P, "percent = 7.5", "percent = 0", "out-of-range", "limit.percent", "above 0"),
            new(
                P,
                "percent = 7.5",
                "percent = \"7.5\"",
                "wrong-type",
                "limit.percent",
                "without quotes"
            ),
            new(
                P,
                "tube_plan = \"a tube per time point\"",
                "tube_plan = \"aliquot\"",
                "unknown-word",
                "tube_plan",
                "Did you mean \"aliquots\""
            ),
            new(
                P,
                "eligibility = {",
                "eligibility = [\"x\"] #",
                "wrong-type",
                "eligibility",
                "a table"
            ),
            new(
                P,
                "group = [{ id = \"none\", name = \"No anticoagulant\", specimens = 40 }]",
                "group = []",
                "empty-list",
                "group",
                "Add a [[group]]"
            )
            {
                Along = [],
            },
            new(
                P,
                "[[limit]]\nid = \"aptt-bias\"",
                "[[limit]]\nid = \"aptt-bias\"\n[limit]",
                "duplicate-key",
                "limit",
                "Keep one"
            )
            {
                LinesBelow = 2,
                Along = ["missing-key", "empty-text"],
            },
            new(
                P,
                "tolerance = {",
                "[tolerance]\nx = {",
                "unknown-key",
                "tolerance.x",
                "known here are early, late"
            )
            {
                LinesBelow = 1,
                Along = ["missing-key", "unknown-key"],
            },
        ];

    private static IEnumerable<BrokenInput> Protocols =>
        [
            new(P, "code = \"WB-RT-12\"", "code = \"WB/RT 12\"", "unfit-code", "code", "\"/ \""),
            new(
                P,
                "code = \"WB-RT-12\"",
                "code = \".WB\"",
                "unfit-code",
                "code",
                "begin with a point"
            ),
            new(
                P,
                "[\"6 h\", \"8 h\"]",
                "[\"8 h\", \"6 h\"]",
                "time-points-order",
                "time_points",
                "from the shortest"
            )
            {
                Along = ["unknown-time-point"],
            },
            new(
                P,
                "[\"6 h\", \"8 h\"]",
                "[\"6 h\", \"6 h\", \"8 h\"]",
                "time-points-order",
                "time_points",
                "each once"
            ),
            new(
                P,
                "[\"6 h\", \"8 h\"]",
                "[\"0 h\", \"6 h\", \"8 h\"]",
                "time-points-order",
                "time_points",
                "above zero"
            ),
            new(
                P,
                "standard_window = { time = \"4 h\"",
                "standard_window = { time = \"2 h\"",
                "first-time-point-too-late",
                "analyte.standard_window",
                "at most 4 h"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "standard_window = { time = \"4 h\"",
                "standard_window = { time = \"0 h\"",
                "out-of-range",
                "analyte.standard_window.time",
                "above zero"
            ),
            new(
                P,
                "baseline_within = \"1 h\"",
                "baseline_within = \"6 h\"",
                "baseline-too-late",
                "baseline_within",
                "shorter than the first"
            ),
            new(
                P,
                "window_step = \"30 min\"",
                "window_step = \"0 min\"",
                "out-of-range",
                "window_step",
                "above zero"
            ),
            new(P, "minimum_days = 5", "minimum_days = 4", "few-days", "minimum_days", "five days")
            {
                Severity = Severity.Attention,
            },
            new(
                P,
                "tube_plan = \"a tube per time point\"",
                "tube_plan = \"one tube retested\"",
                "tube-plan-does-not-fit",
                "storage.state",
                "a tube per time point"
            )
            {
                LinesBelow = 4,
            },
            new(
                P,
                "tube_plan = \"a tube per time point\"",
                "tube_plan = \"aliquots\"",
                "tube-plan-does-not-fit",
                "storage.state",
                "separated plasma"
            )
            {
                LinesBelow = 4,
            },
            new(
                P,
                ", spin_to_test = \"1 h\"",
                "",
                "missing-key",
                "storage.spin_to_test",
                "Add spin_to_test"
            ),
            new(
                P,
                "celsius = [18, 25]",
                "celsius = [25, 18]",
                "out-of-range",
                "storage.celsius",
                "[lowest, highest]"
            ),
            new(
                P,
                "celsius = [18, 25]",
                "celsius = [18, 95]",
                "out-of-range",
                "storage.celsius",
                "°C"
            ),
            new(
                P,
                "state = \"whole blood\"",
                "state = \"whole-blood\"",
                "unknown-word",
                "storage.state",
                "Did you mean \"whole blood\""
            ),
            new(
                P,
                "role = \"approver\"",
                "role = \"author\"",
                "duplicate-id",
                "signatories.role",
                "its own"
            ),
            new(
                P,
                "id = \"aptt-each\"",
                "id = \"aptt-bias\"",
                "duplicate-id",
                "limit.id",
                "line 27"
            )
            {
                Along = ["limit-does-not-fit-scale", "unknown-reference"],
            },
            new(
                P,
                "percent = 7.5\n",
                "percent = 7.5\nbiological_variation = { cvi = 5.8, cvg = 8.4, grade = \"desirable\", goal = \"bias\" }\n",
                "limit-above-goal",
                "limit.percent",
                "at most 2.55"
            ),
            new(P, "percent = 7.5\n", "", "limit-without-amount", "limit.percent", "or both")
            {
                LinesBelow = -2,
            },
            new(
                P,
                "source = \"share of the total allowance\"\n",
                "",
                "missing-key",
                "limit.source",
                "Add \"source\""
            )
            {
                LinesBelow = -3,
            },
            new(
                P,
                "limits = { aPTT = \"aptt-bias\" }",
                "limits = { aPTT = \"aptt-bais\" }",
                "unknown-reference",
                "criterion.limits",
                "Did you mean \"aptt-bias\""
            ),
            new(
                P,
                "limits = { aPTT = \"aptt-bias\" }",
                "limits = { APTT2 = \"aptt-bias\" }",
                "unknown-reference",
                "criterion.limits",
                "Did you mean \"aPTT\""
            )
            {
                Along = ["individual-only"],
            },
            new(
                P,
                "limits = { aPTT = \"aptt-bias\" }",
                "limits = { }",
                "empty-list",
                "criterion.limits",
                "limits = {"
            )
            {
                Along = ["individual-only"],
            },
            new(
                P,
                "scale = \"percent\"",
                "scale = \"percent\"\ngroups = [\"nine\"]",
                "unknown-reference",
                "criterion.groups",
                "known are none"
            )
            {
                LinesBelow = 1,
                Along = ["individual-only"],
            },
            new(
                P,
                "kind = \"bias\"",
                "kind = \"regression\"",
                "unknown-word",
                "criterion.kind",
                "\"bias\" | \"individual\""
            ),
            new(
                P,
                "scale = \"percent\"",
                "scale = \"absolute\"",
                "limit-does-not-fit-scale",
                "criterion.scale",
                "absolute_in_unit only"
            ),
            new(
                P,
                "limits = { aPTT = \"aptt-bias\" }",
                "limits = { aPTT = \"aptt-each\" }",
                "limit-does-not-fit-scale",
                "criterion.scale",
                "percent only"
            )
            {
                LinesBelow = 1,
                Along = ["bias-limit-is-individual"],
            },
            new(
                P,
                "share_percent_min = 85",
                "share_percent_min = 50",
                "out-of-range",
                "criterion.share_percent_min",
                "above 50"
            ),
            new(
                P,
                "share_percent_min = 85",
                "share_percent_min = 85\nscale = \"percent\"",
                "unknown-key",
                "criterion.scale",
                "individual"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "confidence = 0.90",
                "confidence = 0.5",
                "out-of-range",
                "criterion.confidence",
                "0.8 to 0.999"
            ),
            new(
                P,
                "confidence = 0.90",
                "confidence = 90",
                "out-of-range",
                "criterion.confidence",
                "0.8 to 0.999"
            ),
            new(
                P,
                "specimens = 40",
                "specimens = 18",
                "criterion-out-of-reach",
                "criterion.share_percent_min",
                "at least 19"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 37,
            },
            new(
                P,
                "kind = \"individual\"\nlimits = { aPTT = \"aptt-each\" }\nshare_percent_min = 85",
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-each\" }\nscale = \"share\"",
                "bias-only",
                "analyte.id",
                "individual"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -31,
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"\nconfidence = 0.90\n\n[[criterion]]\nid = \"each\"\nkind = \"individual\"\nlimits = { aPTT = \"aptt-each\" }\nshare_percent_min = 85",
                "kind = \"reclassification\"\nanalytes = [\"aPTT\"]\nshare_percent_max = 10",
                "sides-only",
                "analyte.id",
                "far from a level"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -24,
                Along = ["unused-limit"],
            },
            new(
                P,
                "[[limit]]\nid = \"aptt-bias\"",
                "[[analyte]]\nid = \"PT\"\nname = \"Prothrombin time\"\nunit = \"s\"\ndecimals = 1\nstandard_window = { time = \"24 h\", source = \"common practice\" }\nmanufacturer_limit = { time = \"24 h\", document = \"instructions revision 3\" }\ncv_percent = { between_run = 2 }\n\n[[limit]]\nid = \"aptt-bias\"",
                "analyte-without-criterion",
                "analyte.id",
                "not assessed"
            )
            {
                Severity = Severity.Note,
                LinesBelow = 1,
            },
            new(
                P,
                "decision_levels = [40.0, 60.0]",
                "decision_levels = [60.0, 40.0]",
                "out-of-range",
                "analyte.decision_levels",
                "lowest to the highest"
            ),
            new(
                P,
                "measuring_interval = [20.0, 180.0]",
                "measuring_interval = [20.0]",
                "out-of-range",
                "analyte.measuring_interval",
                "two numbers"
            ),
            new(
                P,
                "decimals = 1",
                "decimals = 1\ndrift_shape = \"cubic\"",
                "unknown-word",
                "analyte.drift_shape",
                "quadratic"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\nerror_variance_ratio = -1",
                "out-of-range",
                "analyte.error_variance_ratio",
                "above zero"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nreplicates = 3",
                "out-of-range",
                "replicates",
                "from 1 to 2"
            )
            {
                LinesBelow = 1,
            },
        ];

    private static IEnumerable<BrokenInput> Criteria =>
        [
            new(
                P,
                "share_percent_min = 85\nconfidence = 0.95",
                "share_percent_min = 85\nconfidence = 0.95\n\n[[criterion]]\nid = \"sides\"\nkind = \"reclassification\"\nanalytes = [\"aPTT\"]\nlevels = [40.0, 60.0]\nshare_percent_max = 15\nconfidence = 0.95\ndirection = \"down\"\nnear = { range = [55.0, 90.0], specimens_min = 40 }",
                "near-range-misplaced",
                "criterion.near",
                "level: 60"
            )
            {
                LinesBelow = 11,
            },
            new(
                P,
                "baseline_within = \"1 h\"",
                "baseline_within = \"1 h\"\nchange_since = \"baseline\"\ntime_counts_from = \"thawing\"",
                "time-origin-does-not-fit",
                "storage.state",
                "no thawed plasma"
            )
            {
                LinesBelow = 7,
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"drift\"\nlimits = { aPTT = \"aptt-bias\" }\nshapes = [\"linear\"]",
                "individual-only",
                "analyte.id",
                "Add a criterion of kind \"bias\""
            )
            {
                Severity = Severity.Attention,
                LinesBelow = -24,
            },
            new(
                P,
                "kind = \"bias\"",
                "kind = \"bias\"\nshapes = [\"linear\"]",
                "unknown-key",
                "criterion.shapes",
                "limits, scale, rule"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "share_percent_min = 85",
                "share_percent_min = 100",
                "out-of-range",
                "criterion.share_percent_min",
                "point only"
            ),
            new(
                P,
                "share_percent_min = 85",
                "share_percent_min = 100\nrule = \"point only\"",
                "point-share-alone",
                "analyte.id",
                "controls no error"
            )
            {
                LinesBelow = -33,
                Along = ["decided-by-estimate-alone"],
            },
            new(
                P,
                "scale = \"percent\"",
                "scale = \"percent\"\nrule = \"point-only\"",
                "unknown-word",
                "criterion.rule",
                "Did you mean"
            )
            {
                LinesBelow = 1,
                Along = [],
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"drift\"\nlimits = { aPTT = \"aptt-each\" }\nshapes = [\"linear\"]",
                "limit-does-not-fit-scale",
                "criterion.limits",
                "percent only"
            )
            {
                LinesBelow = 1,
                Along = ["individual-only", "wide-limit"],
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"drift\"\nlimits = { aPTT = \"aptt-bias\" }\nshapes = [\"linaer\"]",
                "unknown-word",
                "criterion.shapes",
                "Did you mean \"linear\""
            )
            {
                LinesBelow = 2,
                Along = ["individual-only"],
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"reclassification\"\nanalytes = [\"APTT\"]\nshare_percent_max = 10",
                "unknown-reference",
                "criterion.analytes",
                "Did you mean \"aPTT\""
            )
            {
                LinesBelow = 1,
                Along = ["individual-only", "low-confidence"],
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"reclassification\"\nanalytes = [\"aPTT\"]\nshare_percent_max = 50",
                "out-of-range",
                "criterion.share_percent_max",
                "below 50"
            )
            {
                LinesBelow = 2,
                Along = ["individual-only", "low-confidence"],
            },
            new(
                P,
                "kind = \"bias\"\nlimits = { aPTT = \"aptt-bias\" }\nscale = \"percent\"",
                "kind = \"classification\"\nanalytes = [\"aPTT\"]\nshare_percent_min = 90\nweak_positives_min = 5",
                "criterion-does-not-fit-analyte",
                "criterion.cutoffs",
                "Add cutoffs"
            )
            {
                LinesBelow = -2,
                Along = ["individual-only", "criterion-out-of-reach", "low-confidence"],
            },
            new(
                P,
                "decimals = 1\nstandard_window = { time = \"4 h\", source = \"common practice\" }\nmanufacturer_limit = { time = \"4 h\", document = \"instructions revision 3\" }\ncv_percent = { between_run = 2.5 }\nmeasuring_interval = [20.0, 180.0]\ndecision_levels = [40.0, 60.0]",
                "standard_window = { time = \"4 h\", source = \"common practice\" }\nmanufacturer_limit = { time = \"4 h\", document = \"instructions revision 3\" }\ncategories = [\"negative\", \"positive\"]",
                "criterion-does-not-fit-analyte",
                "criterion.limits",
                "classification"
            )
            {
                LinesBelow = 18,
                Along = ["other-unit", "unknown-result"],
            },
            new(
                P,
                "decision_levels = [40.0, 60.0]",
                "categories = [\"negative\", \"positive\"]",
                "unknown-key",
                "analyte.measuring_interval",
                "categories"
            )
            {
                LinesBelow = -1,
                Along = ["criterion-does-not-fit-analyte", "unknown-result"],
            },
            new(
                P,
                "decision_levels = [40.0, 60.0]",
                "categories = [\"negative\", \"Negative\"]",
                "out-of-range",
                "analyte.categories",
                "most negative"
            )
            {
                Along = ["unknown-key", "criterion-does-not-fit-analyte", "unknown-result"],
            },
            new(
                P,
                "decision_levels = [40.0, 60.0]\n\n[[limit]]",
                "\n[[criterion]]\nid = \"levels\"\nkind = \"decision-level\"\nlimits = { aPTT = \"aptt-bias\" }\nconfidence = 0.90\n[[limit]]",
                "no-decision-level",
                "criterion.levels",
                "decision_levels"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ntime_points = [\"7 h\"]",
                "unknown-reference",
                "analyte.time_points",
                "known are 6 h, 8 h"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ntime_points = [\"8 h\", \"6 h\"]",
                "time-points-order",
                "analyte.time_points",
                "each once"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ngroups = [\"nine\"]",
                "unknown-reference",
                "analyte.groups",
                "known are none"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\nstorages = [\"wb\"]",
                "unknown-reference",
                "analyte.storages",
                "known are wb-rt"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ngroup_windows = [{ group = \"ufh\", time = \"2 h\", source = \"common practice\" }]",
                "unknown-reference",
                "analyte.group_windows",
                "known are none"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ngroup_windows = [{ group = \"none\", storage = \"wb-4\", time = \"2 h\", source = \"common practice\" }]",
                "unknown-reference",
                "analyte.group_windows",
                "known are wb-rt"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ngroup_windows = [{ group = \"none\", storage = \"wb-rt\", time = \"4 h\", source = \"common practice\", time_points = [\"6 h\"] }]",
                "unknown-key",
                "analyte.group_windows",
                "the same times in every storage"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\ngroup_windows = [{ group = \"none\", time = \"4 h\", as_plasma = \"4 h\", source = \"common practice\" }]",
                "out-of-range",
                "analyte.group_windows.as_plasma",
                "no longer than the 4 h of the first step"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "decimals = 1",
                "decimals = 1\nratio_of = \"aPTT\"",
                "unknown-reference",
                "analyte.ratio_of",
                "prothrombin time"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\ncontrols = \"every day\"",
                "unknown-word",
                "controls",
                "kept elsewhere"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nleft_out_percent_max = 101",
                "out-of-range",
                "left_out_percent_max",
                "0 to 100"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\none_run_within = \"0 min\"",
                "out-of-range",
                "one_run_within",
                "above zero"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nrerun_reasons = [\"error\", \"error\"]",
                "duplicate-id",
                "rerun_reasons",
                "each once"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\ndelays_per_specimen = 3",
                "out-of-range",
                "delays_per_specimen",
                "time points"
            )
            {
                LinesBelow = 1,
            },
            new(
                P,
                "minimum_days = 5",
                "minimum_days = 5\nrepeat_draws = \"cluster\"",
                "unknown-word",
                "repeat_draws",
                "one cluster"
            )
            {
                LinesBelow = 1,
            },
            new(
                S,
                "[[deviation]]",
                "[[rerun]]\nspecimen = \"S-001\"\nanalyte = \"aPTT\"\nreason = \"looked odd\"\nby = \"P1\"\non = 2026-03-03\n\n[[deviation]]",
                "unknown-reference",
                "rerun.reason",
                "rerun reason in the protocol"
            )
            {
                LinesBelow = 3,
            },
            new(
                S,
                "title = \"aPTT in whole blood\"",
                "title = \"aPTT in whole blood that waits at room temperature until somebody has the time to spin and to test it, which may be the next day or the day after\"",
                "text-too-long",
                "title",
                "room for 120"
            ),
            new(
                S,
                "expires = \"2027-01-31\"",
                "expires = \"2027-01-31\"\nisi = 0",
                "out-of-range",
                "lot.isi",
                "sensitivity index"
            )
            {
                LinesBelow = 1,
            },
            new(
                S,
                "results = \"results.csv\"",
                "results = \"results.csv\"\ncontrols = \"results.csv\"",
                "duplicate-id",
                "files.controls",
                "two files"
            )
            {
                LinesBelow = 1,
                Along = ["missing-column", "column-not-used", "column-misspelt", "file-not-read"],
            },
        ];

    private static IEnumerable<BrokenInput> Facts =>
        [
            new(
                S,
                "time_zone = \"Europe/Berlin\"",
                "time_zone = \"Europe/Berlinn\"",
                "unknown-time-zone",
                "time_zone",
                "IANA"
            ),
            new(
                S,
                "time_zone = \"Europe/Berlin\"",
                "time_zone = \"../etc/hosts\"",
                "unknown-time-zone",
                "time_zone",
                "IANA"
            ),
            new(
                S,
                "time_zone = \"Europe/Berlin\"\n",
                "",
                "time-without-offset",
                "collected_at",
                "Add the offset"
            )
            {
                OtherFile = "specimens.csv",
                Along = [],
            },
            new(
                S,
                "invented = true",
                "invented = \"yes\"",
                "wrong-type",
                "invented",
                "true or false"
            ),
            new(
                S,
                "[files]",
                "[revision]\nnumber = 2\nreplaces = \"3F09C2D41B7A5E68\"\nreason = \"lot corrected\"\n\n[files]",
                "not-a-digest",
                "revision.replaces",
                "at least sixteen"
            )
            {
                LinesBelow = 2,
            },
            new(
                S,
                "[files]",
                "[revision]\nnumber = 2\nreplaces = \"3f09c2d41b7a5e6\"\nreason = \"lot corrected\"\n\n[files]",
                "not-a-digest",
                "revision.replaces",
                "at least sixteen"
            )
            {
                LinesBelow = 2,
            },
            new(
                S,
                "[files]",
                "[revision]\nnumber = 1\nreplaces = \"3f09c2d41b7a5e68\"\nreason = \"lot corrected\"\n\n[files]",
                "out-of-range",
                "revision.number",
                "2 to 999"
            )
            {
                LinesBelow = 1,
            },
            new(
                S,
                "[files]",
                "[revision]\nnumber = 2\nreplaces = \"3f09c2d41b7a5e68\"\n\n[files]",
                "missing-key",
                "revision.reason",
                "Add"
            ),
            new(
                S,
                "results = \"results.csv\"",
                "results = \"../results.csv\"",
                "not-a-plain-name",
                "files.results",
                "write that name only"
            ),
            new(
                S,
                "results = \"results.csv\"",
                "results = \"results.ods\"",
                "not-a-plain-name",
                "files.results",
                "ends in .csv"
            ),
            new(
                S,
                "results = \"results.csv\"",
                "results = \"C:\\\\results.csv\"",
                "not-a-plain-name",
                "files.results",
                "study folder"
            ),
            new(
                S,
                "results = \"results.csv\"",
                "results = \"specimens.csv\"",
                "duplicate-id",
                "files.results",
                "two files"
            )
            {
                Along = ["missing-column", "column-not-used", "column-misspelt", "file-not-read"],
            },
            new(
                S,
                "expires = \"2027-01-31\"",
                "expires = \"2027-02-31\"",
                "not-a-date",
                "lot.expires",
                "year-month-day"
            ),
            new(
                S,
                "expires = \"2027-01-31\"",
                "expires = \"31.01.2027\"",
                "not-a-date",
                "lot.expires",
                "2026-02-28"
            ),
            new(
                S,
                "expires = \"2027-01-31\"",
                "expires = \"2026-03-01\"",
                "lot-expired",
                "lot",
                "deviation"
            )
            {
                OtherFile = "results.csv",
                Severity = Severity.Attention,
            },
            new(
                S,
                "analyte = \"aPTT\"\nexpires",
                "analyte = \"APTT\"\nexpires",
                "unknown-reference",
                "lot.analyte",
                "Did you mean \"aPTT\""
            ),
            new(
                S,
                "[clock]\ncollected_at",
                "[clock]\ncolected_at",
                "unknown-key",
                "clock.colected_at",
                "collected_at"
            )
            {
                LinesBelow = 1,
            },
            new(
                S,
                "specimen = \"S-002\"",
                "specimen = \"S-003\"",
                "unknown-reference",
                "exclusion.specimen",
                "There is no specimen"
            ),
            new(
                S,
                "time_point = \"8 h\"",
                "time_point = \"9 h\"",
                "unknown-reference",
                "exclusion.time_point",
                "time point"
            ),
            new(
                S,
                "by = \"P1\"\non = 2026-03-03",
                "by = \"P2\"\non = 2026-03-03",
                "unknown-reference",
                "exclusion.by",
                "Did you mean \"P1\""
            ),
            new(
                S,
                "on = 2026-03-03",
                "on = 2026-03-03T10:00:00",
                "not-a-date",
                "exclusion.on",
                "2026-02-28"
            ),
            new(
                S,
                "reason = \"Kept in the refrigerator.\"\n",
                "",
                "missing-key",
                "exclusion.reason",
                "Add \"reason\""
            )
            {
                LinesBelow = -4,
            },
            new(
                S,
                "code = \"P1\"",
                "code = \"P1\"\nemail = \"x\"",
                "unknown-key",
                "person.email",
                "code, name, role"
            )
            {
                LinesBelow = 1,
            },
        ];
}
