using System.Collections.Immutable;
using static StabilityStudy.Files.Formats.KeyNeed;

namespace StabilityStudy.Files.Formats;

/// <summary>What each key of an analyte in protocol.toml is for.</summary>
internal static class AnalyteNotes
{
    public static readonly ImmutableArray<KeyNote> All =
    [
        new("analyte", Required, "measured quantities, a [[analyte]] each", "[[analyte]]"),
        new("analyte.id", Required, "code used in results.csv", "\"aPTT\""),
        new(
            "analyte.name",
            Required,
            "name in the report",
            "\"Activated partial thromboplastin time\""
        ),
        new("analyte.method", Optional, "method principle", "\"one-stage, optical end point\""),
        new("analyte.loinc", Optional, "LOINC code", "\"14979-9\""),
        new("analyte.unit", Depends, "UCUM unit; not required with categories", "\"s\""),
        new("analyte.decimals", Depends, "decimals of a reported result; not with categories", "1"),
        new(
            "analyte.standard_window",
            Required,
            "what today's rule allows",
            "{ time = \"4 h\", source = \"common practice\" }"
        ),
        new(
            "analyte.standard_window.time",
            Required,
            "longest time from collection to test",
            "\"4 h\""
        ),
        new("analyte.standard_window.source", Required, "the rule", "\"common practice\""),
        new(
            "analyte.group_windows",
            Optional,
            "groups with another rule today",
            "[{ group = \"ufh\", time = \"1 h\", source = \"common practice\" }]"
        ),
        new("analyte.group_windows.group", Required, "code of the group", "\"ufh\""),
        new(
            "analyte.group_windows.time",
            Required,
            "longest time from collection to test",
            "\"1 h\""
        ),
        new("analyte.group_windows.source", Required, "the rule", "\"common practice\""),
        new(
            "analyte.manufacturer_limit",
            Optional,
            "what the manufacturer allows",
            "{ time = \"4 h\", document = \"instructions for use, revision 3\" }"
        ),
        new(
            "analyte.manufacturer_limit.time",
            Required,
            "longest time from collection to test",
            "\"4 h\""
        ),
        new(
            "analyte.manufacturer_limit.document",
            Required,
            "the document",
            "\"instructions for use, revision 3\""
        ),
        new(
            "analyte.cv_percent",
            Optional,
            "imprecision; not with categories",
            "{ between_run = 2.5 }"
        ),
        new(
            "analyte.cv_percent.between_run",
            Required,
            "between-run coefficient of variation, percent",
            "2.5"
        ),
        new(
            "analyte.measuring_interval",
            Optional,
            "lowest and highest number reported; not with categories",
            "[20.0, 180.0]"
        ),
        new(
            "analyte.decision_levels",
            Optional,
            "values at which care changes, ascending; not with categories",
            "[40.0, 60.0]"
        ),
        new(
            "analyte.error_variance_ratio",
            Optional,
            "error variance of the baseline ÷ that of the delayed result; 1 when not given; not with categories",
            "0.5"
        ),
        new(
            "analyte.drift_shape",
            Optional,
            "\"linear\" (when not given), \"logarithmic\" or \"quadratic\"; not with categories",
            "\"logarithmic\""
        ),
        new(
            "analyte.time_points",
            Optional,
            "those of the protocol's at which it is tested; all when not given",
            "[\"6 h\"]"
        ),
        new(
            "analyte.groups",
            Optional,
            "groups in which it is studied; all when not given",
            "[\"none\"]"
        ),
        new(
            "analyte.storages",
            Optional,
            "storages in which it is studied; all when not given",
            "[\"wb-rt\"]"
        ),
        new(
            "analyte.categories",
            Optional,
            "results of a qualitative test, the most negative first",
            "[\"negative\", \"weak positive\", \"positive\"]"
        ),
        new(
            "analyte.ratio_of",
            Optional,
            "the prothrombin time from which this ratio is computed; not with categories",
            "\"PT\""
        ),
    ];
}
