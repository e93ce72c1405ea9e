using System.Collections.Immutable;
using StabilityStudy.Files.Layouts;

namespace StabilityStudy.Files.Csv;

/// <summary>The columns of a file, in the order in which the canonical file has them.</summary>
/// <param name="Section">Name of the table under [read] in study.toml that describes such a file.</param>
/// <param name="All">Every known column.</param>
/// <param name="Required">Those that every file must have.</param>
internal sealed record CsvColumns(
    string Section,
    ImmutableArray<string> All,
    ImmutableArray<string> Required
)
{
    /// <summary>How the facility's file differs; null when it does not.</summary>
    public FileLayout? Layout { get; init; }

    /// <summary>The column of a canonical file that holds the line in the facility's file.</summary>
    public const string SourceRow = "source_row";

    /// <summary>The columns of specimens.csv.</summary>
    public static readonly CsvColumns Specimens = new(
        "specimens",
        [
            "specimen",
            "tube",
            "subject",
            "group",
            "storage",
            "draw_position",
            "collected_at",
            "received_at",
            "spun_at",
            "separated_at",
            "frozen_at",
            "thawed_at",
            "fill_percent",
            "inversions",
            "hematocrit_percent",
            "hemolysis",
            "clot",
            "device",
            "origin",
        ],
        ["specimen", "tube", "subject", "group", "storage", "collected_at"]
    );

    /// <summary>The columns of results.csv.</summary>
    public static readonly CsvColumns Results = new(
        "results",
        [
            "specimen",
            "tube",
            "analyte",
            "time_point",
            "replicate",
            "tested_at",
            "result",
            "unit",
            "run",
            "instrument",
            "lot",
            "calibration",
            "operator",
            "flag",
            "remark",
        ],
        ["specimen", "tube", "analyte", "time_point", "tested_at", "result", "unit"]
    );

    /// <summary>The columns of controls.csv.</summary>
    public static readonly CsvColumns Controls = new(
        "controls",
        [
            "control",
            "analyte",
            "run",
            "tested_at",
            "result",
            "unit",
            "target",
            "allowed_low",
            "allowed_high",
            "kind",
        ],
        ["control", "analyte", "run", "tested_at", "result", "unit"]
    );

    /// <summary>The columns of a file with a row a pair.</summary>
    public static readonly CsvColumns Pairs = new(
        "pairs",
        [
            "specimen",
            "subject",
            "group",
            "storage",
            "analyte",
            "collected_at",
            "baseline_tested_at",
            "baseline_result",
            "time_point",
            "delayed_tested_at",
            "delayed_result",
            "baseline_run",
            "delayed_run",
            "instrument",
            "lot",
            "spun_at",
            "baseline_spun_at",
            "fill_percent",
            "baseline_fill_percent",
            "hematocrit_percent",
            "clot",
            "baseline_clot",
            "hemolysis",
            "baseline_hemolysis",
            "origin",
            "unit",
        ],
        [
            "specimen",
            "collected_at",
            "baseline_tested_at",
            "baseline_result",
            "delayed_tested_at",
            "delayed_result",
        ]
    );

    /// <summary>The same with the line in the facility's file, as a canonical file has it.</summary>
    public CsvColumns WithSourceRow() => new(Section, [.. All, SourceRow], [.. All, SourceRow]);

    /// <summary>Whether a file begins with exactly the header line of the canonical file with these columns.</summary>
    public bool IsCanonical(ReadOnlySpan<byte> utf8)
    {
        var header = System.Text.Encoding.UTF8.GetBytes(string.Join(',', WithSourceRow().All));
        return utf8.StartsWith(header) && utf8[header.Length..] is [(byte)'\n' or (byte)'\r', ..];
    }
}
