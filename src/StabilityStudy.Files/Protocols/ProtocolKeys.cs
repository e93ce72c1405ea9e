using System.Collections.Immutable;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Every key of protocol.toml.</summary>
internal static class ProtocolKeys
{
    public static readonly TableShape Root = new(
        "",
        "format",
        "code",
        "version",
        "time_points",
        "tolerance",
        "baseline_within",
        "tube_plan",
        "replicates",
        "minimum_days",
        "window_step",
        "left_out_percent_max",
        "one_run_within",
        "rerun_reasons",
        "controls",
        "repeat_draws",
        "delays_per_specimen",
        "looks",
        "signatories",
        "storage",
        "group",
        "eligibility",
        "analyte",
        "limit",
        "criterion"
    );

    public static readonly TableShape Tolerance = new("tolerance", "early", "late");

    public static readonly TableShape Signatory = new("signatories", "role", "meaning");

    public static readonly TableShape Storage = new(
        "storage",
        "id",
        "state",
        "cap",
        "celsius",
        "spin_to_test"
    );

    public static readonly TableShape Group = new(
        "group",
        "id",
        "name",
        "specimens",
        "baseline_spun_within"
    );

    public static readonly TableShape Eligibility = new(
        "eligibility",
        "fill_percent_min",
        "hematocrit_percent_max",
        "clot",
        "source"
    );

    public static readonly TableShape Analyte = new(
        "analyte",
        "id",
        "name",
        "method",
        "loinc",
        "unit",
        "decimals",
        "standard_window",
        "manufacturer_limit",
        "cv_percent",
        "measuring_interval",
        "decision_levels",
        "error_variance_ratio",
        "drift_shape",
        "time_points",
        "groups",
        "storages",
        "group_windows",
        "categories",
        "ratio_of"
    );

    public static readonly TableShape StandardWindow = new("standard_window", "time", "source");

    public static readonly TableShape GroupWindow = new("group_windows", "group", "time", "source");

    public static readonly TableShape ManufacturerLimit = new(
        "manufacturer_limit",
        "time",
        "document"
    );

    public static readonly TableShape CvPercent = new("cv_percent", "between_run");

    public static readonly TableShape Limit = new(
        "limit",
        "id",
        "percent",
        "absolute_in_unit",
        "source",
        "biological_variation"
    );

    public static readonly TableShape LimitBasis = new(
        "biological_variation",
        "cvi",
        "cvg",
        "grade",
        "goal"
    );

    public static readonly TableShape Criterion = new(
        "criterion",
        "id",
        "kind",
        "limits",
        "analytes",
        "groups",
        "confidence",
        "rule",
        "scale",
        "share_percent_min",
        "share_percent_max",
        "levels",
        "cutoffs",
        "weak_positives_min",
        "shapes"
    );

    /// <summary>Keys are analytes, values are limits.</summary>
    public static readonly TableShape CriterionLimits = new("limits");

    /// <summary>Every table, for documentation that must name each key.</summary>
    public static readonly ImmutableArray<TableShape> All =
    [
        Root,
        Tolerance,
        Signatory,
        Storage,
        Group,
        Eligibility,
        Analyte,
        StandardWindow,
        GroupWindow,
        ManufacturerLimit,
        CvPercent,
        Limit,
        LimitBasis,
        Criterion,
    ];
}
