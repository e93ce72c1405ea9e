using System.Collections.Immutable;
using static StabilityStudy.Files.Formats.KeyNeed;

namespace StabilityStudy.Files.Formats;

/// <summary>What each key of protocol.toml is for.</summary>
internal static class ProtocolNotes
{
    public static readonly ImmutableArray<KeyNote> All =
    [
        new("format", Required, "layout of the file", "1"),
        new("code", Required, "study code; names files and stands on every page", "\"WB-RT-12\""),
        new("version", Required, "version of the protocol", "\"2\""),
        new(
            "time_points",
            Required,
            "planned delays since collection, ascending",
            "[\"6 h\", \"8 h\"]"
        ),
        new(
            "tolerance",
            Required,
            "how far an actual delay may lie from the planned one",
            "{ early = \"0 min\", late = \"30 min\" }"
        ),
        new("tolerance.early", Required, "before the planned delay", "\"0 min\""),
        new("tolerance.late", Required, "after the planned delay", "\"30 min\""),
        new(
            "baseline_within",
            Required,
            "longest time from collection to the baseline test",
            "\"1 h\""
        ),
        new(
            "tube_plan",
            Required,
            "\"a tube per time point\", \"aliquots\" or \"one tube retested\"",
            "\"a tube per time point\""
        ),
        new(
            "replicates",
            Optional,
            "results per tube that are averaged, 1 or 2; 1 when not given",
            "1"
        ),
        new(
            "minimum_days",
            Required,
            "fewest collection days on which a mean is judged, 2 or more",
            "5"
        ),
        new("window_step", Required, "a window is rounded down to this step", "\"30 min\""),
        new(
            "left_out_percent_max",
            Optional,
            "largest share of specimens left out of a time point, percent; 20 when not given",
            "20"
        ),
        new(
            "one_run_within",
            Optional,
            "longest time between two tests of one run; 1 h when not given",
            "\"1 h\""
        ),
        new(
            "rerun_reasons",
            Optional,
            "reasons for which a test may be repeated; none when not given",
            "[\"instrument error\"]"
        ),
        new(
            "controls",
            Optional,
            "\"every run\" (when not given) or \"kept elsewhere\"",
            "\"every run\""
        ),
        new(
            "repeat_draws",
            Optional,
            "a second specimen of a person: \"left out\" (when not given) or \"one cluster\"",
            "\"left out\""
        ),
        new(
            "delays_per_specimen",
            Optional,
            "how many time points each specimen is tested at; all when not given",
            "2"
        ),
        new(
            "looks",
            Optional,
            "2 where an extension is planned: the data are looked at when the planned specimens are in, and once more after the extension; confidence is then at least 0.95 for means and 0.975 for shares; 1 when not given",
            "1"
        ),
        new(
            "signatories",
            Required,
            "who signs, in order",
            "[{ role = \"author\", meaning = \"ran this study\" }]"
        ),
        new("signatories.role", Required, "part in signing", "\"author\""),
        new("signatories.meaning", Required, "what the signature says", "\"ran this study\""),
        new(
            "storage",
            Required,
            "states in which tubes wait",
            "[{ id = \"wb-rt\", state = \"whole blood\", cap = \"closed\", celsius = [18, 25], spin_to_test = \"1 h\" }]"
        ),
        new("storage.id", Required, "code used in specimens.csv", "\"wb-rt\""),
        new(
            "storage.state",
            Required,
            "\"whole blood\", \"spun on cells\" or \"separated plasma\"",
            "\"whole blood\""
        ),
        new("storage.cap", Required, "\"closed\" or \"open\"", "\"closed\""),
        new("storage.celsius", Required, "lowest and highest temperature, °C", "[18, 25]"),
        new(
            "storage.spin_to_test",
            Depends,
            "longest time from spinning to the test; required for whole blood",
            "\"1 h\""
        ),
        new(
            "group",
            Required,
            "patient groups",
            "[{ id = \"none\", name = \"No anticoagulant\", specimens = 40 }]"
        ),
        new("group.id", Required, "code used in specimens.csv", "\"none\""),
        new("group.name", Required, "name in the report", "\"No anticoagulant\""),
        new("group.specimens", Required, "planned number of specimens", "40"),
        new(
            "group.baseline_spun_within",
            Optional,
            "longest time from collection to spinning of the baseline tube",
            "\"1 h\""
        ),
        new(
            "eligibility",
            Required,
            "which specimens may be used",
            "{ fill_percent_min = 90, hematocrit_percent_max = 55, clot = \"reject\", source = \"common practice\" }"
        ),
        new("eligibility.fill_percent_min", Optional, "least fill, percent of nominal", "90"),
        new("eligibility.hematocrit_percent_max", Optional, "highest hematocrit, percent", "55"),
        new("eligibility.clot", Required, "\"reject\" or \"accept\"", "\"reject\""),
        new("eligibility.source", Required, "where the rules come from", "\"common practice\""),
        .. AnalyteNotes.All,
        new(
            "limit",
            Depends,
            "limits, a [[limit]] each; not needed where no criterion has limits",
            "[[limit]]"
        ),
        new("limit.id", Required, "code used in criteria", "\"aptt-bias\""),
        new(
            "limit.percent",
            Depends,
            "percent of the baseline; this, absolute_in_unit or both",
            "7.5"
        ),
        new(
            "limit.absolute_in_unit",
            Depends,
            "amount in the unit; the greater of both counts",
            "2.0"
        ),
        new(
            "limit.source",
            Required,
            "where the limit comes from",
            "\"director's decision of 2026-01-15\""
        ),
        new(
            "limit.biological_variation",
            Optional,
            "the variation from which the percentage follows; a percentage above the goal stops the study",
            "{ cvi = 5.8, cvg = 8.4, grade = \"desirable\", goal = \"bias\" }"
        ),
        new("limit.biological_variation.cvi", Required, "within healthy persons, percent", "5.8"),
        new("limit.biological_variation.cvg", Required, "between healthy persons, percent", "8.4"),
        new(
            "limit.biological_variation.grade",
            Required,
            "\"optimum\", \"desirable\" or \"minimum\"",
            "\"desirable\""
        ),
        new(
            "limit.biological_variation.goal",
            Required,
            "\"bias\", for a mean, or \"total error\", for single specimens",
            "\"bias\""
        ),
        new("criterion", Required, "criteria, a [[criterion]] each", "[[criterion]]"),
        new("criterion.id", Required, "code used in the report", "\"mean\""),
        new(
            "criterion.kind",
            Required,
            "\"bias\", \"individual\", \"decision-level\", \"reclassification\", \"classification\" or \"drift\"",
            "\"bias\""
        ),
        new("criterion.groups", Optional, "groups it applies to; all when not given", "[\"none\"]"),
        new("criterion.confidence", Required, "confidence level from 0.8 to 0.999", "0.90"),
        new(
            "criterion.limits",
            OfSomeKinds,
            "bias, individual, decision-level, drift: the limit of each analyte",
            "{ aPTT = \"aptt-bias\" }"
        ),
        new(
            "criterion.analytes",
            OfSomeKinds,
            "reclassification, classification: the analytes",
            "[\"INR\"]"
        ),
        new(
            "criterion.scale",
            OfSomeKinds,
            "bias: \"percent\", \"absolute\", \"share\" or \"log-ratio\"",
            "\"percent\""
        ),
        new(
            "criterion.rule",
            Optional,
            "bias, individual: \"confidence\" (when not given) or \"point only\"",
            "\"confidence\""
        ),
        new(
            "criterion.share_percent_min",
            OfSomeKinds,
            "individual, classification: least share that agrees, percent; 100 only with \"point only\"",
            "85"
        ),
        new(
            "criterion.share_percent_max",
            OfSomeKinds,
            "reclassification: largest share that changes side, percent",
            "10"
        ),
        new(
            "criterion.levels",
            Optional,
            "decision-level, reclassification: the levels; the analyte's when not given",
            "[2.0, 3.0]"
        ),
        new(
            "criterion.cutoffs",
            OfSomeKinds,
            "classification of numbers: where each class above the lowest begins",
            "[1.2]"
        ),
        new(
            "criterion.weak_positives_min",
            OfSomeKinds,
            "classification: fewest specimens in the class above the lowest",
            "5"
        ),
        new(
            "criterion.shapes",
            OfSomeKinds,
            "drift: shapes of change that must all pass",
            "[\"logarithmic\", \"linear\"]"
        ),
    ];
}
